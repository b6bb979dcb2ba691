/** The passes as a picture of the groove and as a table. */
import type { UnitSystem } from '../../../engine/quantity/prefer.ts';
import { basicSizes, type Plan, type Side, type Thread } from '../../../engine/threads/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { useWidth } from '../../pictures/use-width.ts';
import { sayLength } from './say.ts';

interface Props {
  readonly thread: Thread;
  readonly plan: Plan;
  readonly side: Side;
  readonly system: UnitSystem;
}

const HEIGHT = 190;

export function Passes({ thread, plan, side, system }: Props) {
  const [ref, width] = useWidth<HTMLDivElement>();
  return (
    <>
      <div ref={ref} className="passes-picture" style={{ minHeight: HEIGHT }}>
        {width > 0 && <Groove thread={thread} plan={plan} side={side} width={Math.min(width, 420)} />}
      </div>
      <Scroll label="Passes, a table">
        <table className="passes">
          <thead>
            <tr>
              <th scope="col">pass</th>
              <th scope="col" className="number">
                depth
              </th>
              <th scope="col" className="number">
                infeed
              </th>
              <th scope="col" className="number">
                tool at ø
              </th>
              <th scope="col" className="number">
                shift along
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.passes.map(({ number, depth, infeed, diameter, shift }) => (
              <tr key={number}>
                <td>{number}</td>
                <td className="number">{sayLength(depth, system)}</td>
                <td className="number">{sayLength(infeed, system)}</td>
                <td className="number">{sayLength(diameter, system)}</td>
                <td className="number">{sayLength(shift, system)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </>
  );
}

function Groove({ thread, plan, side, width }: Omit<Props, 'system'> & { readonly width: number }) {
  const basic = basicSizes(thread);
  const depth = basic.depth[side];
  const tan = Math.tan(thread.flankAngle / 2);
  const mouth = basic.tip + 2 * depth * tan;
  const scale = Math.min((width - 20) / mouth, (HEIGHT - 30) / depth);
  const middle = width / 2;
  // Along a flank the tool drifts; the last pass stands in the middle.
  const last = plan.passes.at(-1)!.shift;
  return (
    <svg
      width={width}
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role="img"
      aria-label={`The groove in ${plan.passes.length} passes, each of about the same area.`}
    >
      <rect className="metal" x="0" y="12" width={width} height={HEIGHT - 12} />
      {[...plan.passes].reverse().map(({ number, depth: to, shift }) => {
        const centre = middle + (last - shift) * scale;
        const half = (basic.tip / 2 + to * tan) * scale;
        const tip = (basic.tip / 2) * scale;
        const bottom = 12 + to * scale;
        return (
          <path
            key={number}
            className={number % 2 === 0 ? 'pass even' : 'pass'}
            d={`M${centre - half} 12L${centre - tip} ${bottom}L${centre + tip} ${bottom}L${centre + half} 12Z`}
          />
        );
      })}
    </svg>
  );
}
