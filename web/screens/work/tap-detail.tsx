/** A tapped hole: what the reversal costs, what limits the speed, the speed for each size of tap, and the stroke in time. */
import type { Work } from '../../../engine/refit/types.ts';
import type { TapDetail } from '../../../engine/work/index.ts';
import { InStep } from './in-step.tsx';
import { length, rpm, value } from './say.ts';
import { SpeedBars } from './speed-bars.tsx';
import type { WorkView } from './use-work.ts';

interface Props {
  readonly work: Work;
  readonly detail: TapDetail;
  readonly state: WorkView;
}

export function TapDetails({ work, detail, state }: Props) {
  const { reversal, limits, speed, sizes, caution, depth, hole } = detail;
  return (
    <div className="stack">
      {reversal && Number.isFinite(reversal.angle) && (
        <div>
          <h3>At the reversal</h3>
          <p className="caution">
            <strong>Take care.</strong> {caution}
          </p>
          <table>
            <tbody>
              <Line
                name="spindle still turns by"
                says={`${value(reversal.angle / (2 * Math.PI), '1')} turns`}
              />
              <Line name="and stands after" says={value(reversal.time, 's')} />
              <Line name="the tap goes deeper by" says={length(reversal.overrun)} />
              <Line name="axis and spindle out of step, each way" says={length(reversal.step)} />
              <Line name="depth of full thread" says={length(depth)} />
              <Line name="depth to drill" says={length(reversal.hole)} />
              <Line
                name="hole there is"
                says={hole === null ? 'as deep as it needs' : hole === 'through' ? 'through' : length(hole)}
              />
              <Line name="float a holder would need" says={length(reversal.float)} />
              {reversal.highest !== null && (
                <Line
                  name="highest speed for that"
                  says={reversal.highest > 1 ? rpm(reversal.highest) : 'none'}
                />
              )}
            </tbody>
          </table>
        </div>
      )}
      <div>
        <h3>How fast the spindle may turn</h3>
        <SpeedBars limits={limits} speed={speed} />
      </div>
      <InStep id={work.id} kind="tap" state={state} />
      <details>
        <summary>Highest speed by size of tap</summary>
        <p className="small">
          In this material, the overrun within two pitches, a worn tap. What stands there is the least of what
          the overrun, the torque and the links allow.
        </p>
        <table>
          <thead>
            <tr>
              <th scope="col">tap</th>
              <th scope="col" className="number">
                at most
              </th>
              <th scope="col" className="number">
                by overrun
              </th>
              <th scope="col" className="number">
                by torque
              </th>
            </tr>
          </thead>
          <tbody>
            {sizes.map((size) => (
              <tr key={size.name}>
                <th scope="row">{size.name}</th>
                <td className="number">{size.speed > 0 ? rpm(size.speed) : 'not at all'}</td>
                <td className="number">{rpm(size.byOverrun)}</td>
                <td className="number">{size.byTorque > 0 ? rpm(size.byTorque) : 'too weak'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </div>
  );
}

function Line({ name, says }: { readonly name: string; readonly says: string }) {
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="number">{says}</td>
    </tr>
  );
}
