/** The loop in frequency: how far it is from swinging by itself, and gains to begin with. */
import { type RefObject, useEffect, useState } from 'react';
import { formatNumber } from '../../../engine/quantity/index.ts';
import { type Hunting, huntingInWords, marginsInWords } from '../../../engine/simulate/index.ts';
import { useWidth } from '../../pictures/use-width.ts';
import { getPerson } from '../../state/person.ts';
import type { Movers } from '../../worker/move-client.ts';
import type { LoopAnswer } from '../../worker/move-protocol.ts';
import { Bode, BodeTable } from './bode.tsx';
import type { AxisModel } from './parts.ts';
import { Says } from './says.tsx';

interface Props {
  readonly movers: RefObject<Movers | undefined>;
  readonly model: AxisModel;
  readonly onUse: (gains: Readonly<Record<string, number>>) => void;
}

export function LoopPanel({ movers, model, onUse }: Props) {
  const [loop, setLoop] = useState<LoopAnswer>();
  const [hunting, setHunting] = useState<Hunting | null>(null);
  const [ref, width] = useWidth<HTMLDivElement>();
  useEffect(() => {
    let current = true;
    const rest = setTimeout(() => {
      movers.current?.loop(model).then(
        (got) => current && setLoop(got),
        () => current && setLoop(undefined),
      );
    }, 120);
    // The axis is followed for seconds of its time: not while a slider is still being drawn.
    const still = setTimeout(() => {
      movers.current?.hunting(model).then(
        (got) => current && setHunting(got),
        () => current && setHunting(null),
      );
    }, 600);
    return () => {
      current = false;
      clearTimeout(rest);
      clearTimeout(still);
    };
  }, [movers, model]);
  if (model.control.kind === 'open')
    return (
      <section className="sheet">
        <h2>The loop</h2>
        <p>A stepping motor on pulses has no loop that could swing: it follows, or it falls out of step.</p>
      </section>
    );
  const { margins, gains } = loop ?? { margins: null, gains: null };
  const own = gains && (model.control.kind === 'pid' ? gains.single : gains.cascade);
  return (
    <section className="sheet stack" aria-labelledby="loop">
      <h2 id="loop">Will the loop hold still?</h2>
      {margins && <p>{marginsInWords(margins)}</p>}
      {hunting && <Says says={[huntingInWords(hunting, getPerson().system)]} />}
      <div ref={ref}>{margins && width > 0 && <Bode margins={margins} width={width} />}</div>
      {margins && <BodeTable margins={margins} />}
      {gains && own && (
        <>
          <h3>Gains to begin with</h3>
          <p className="small soft">
            Worked out from this very axis. Begin with a fifth of them at the machine, belt off, low current
            limit.
          </p>
          <ul className="small">
            {gains.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
          <div className="scroll">
            <table>
              <tbody>
                {Object.entries(own).map(([name, value]) => (
                  <tr key={name}>
                    <td>{name.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`)}</td>
                    <td className="number">{formatNumber(value as number, 4)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <button type="button" onClick={() => onUse(own as unknown as Record<string, number>)}>
            Try these gains
          </button>
        </>
      )}
    </section>
  );
}
