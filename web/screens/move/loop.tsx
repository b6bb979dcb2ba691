/** The loop in frequency: how far it is from swinging by itself, and gains to begin with. */
import { type RefObject, useEffect, useState } from 'react';
import { formatNumber } from '../../../engine/quantity/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { gainWords, type Hunting, huntingInWords, marginsInWords } from '../../../engine/simulate/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
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

/** An answer with the model it is of: with other gains it is true no more. */
interface Of<T> {
  readonly model: AxisModel;
  readonly answer: T;
}

export function LoopPanel({ movers, model, onUse }: Props) {
  const [looped, setLoop] = useState<Of<LoopAnswer>>();
  const [rested, setHunting] = useState<Of<Hunting | null>>();
  const [ref, width] = useWidth<HTMLDivElement>();
  useEffect(() => {
    let current = true;
    const rest = setTimeout(() => {
      movers.current?.loop(model).then(
        (got) => current && setLoop({ model, answer: got }),
        () => current && setLoop(undefined),
      );
    }, 120);
    // The axis is followed for seconds of its time: not while a slider is still being drawn.
    const still = setTimeout(() => {
      movers.current?.hunting(model).then(
        (got) => current && setHunting({ model, answer: got }),
        () => current && setHunting({ model, answer: null }),
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
  const isNew = looped?.model === model;
  const hunting = rested?.model === model ? rested.answer : undefined;
  const { margins, gains } = looped?.answer ?? { margins: null, gains: null };
  const structure = model.control.kind === 'pid' ? 'single' : 'cascade';
  const own = gains?.[structure] as Readonly<Record<string, number>> | undefined;
  const words = gainWords(model);
  return (
    <section className="sheet stack" aria-labelledby="loop">
      <h2 id="loop">Will the loop hold still?</h2>
      <p className="small soft">{words.loops}</p>
      {isNew && margins && <p>{marginsInWords(margins)}</p>}
      {(!isNew || hunting === undefined) && (
        <p role="status">
          {isNew ? 'Pushing it off its place to see whether it comes to rest …' : 'Working it out …'}
        </p>
      )}
      {isNew && hunting && <Says says={[huntingInWords(hunting, getPerson().system)]} />}
      {margins && (
        <p className="small soft">
          Upper picture: how many times an error comes back larger after one way round the loop, slow swings
          at the left, quick ones at the right. Lower picture: how late it comes back, in degrees of its own
          swing. Where the upper line crosses 1, the lower one must stay well above −180°: there an error
          would come back just in time to feed itself.
        </p>
      )}
      <div ref={ref} className={isNew ? undefined : 'working'}>
        {margins && width > 0 && <Bode margins={margins} width={width} />}
      </div>
      {margins && <BodeTable margins={margins} />}
      {gains && own && (
        <>
          <h3>Gains to begin with</h3>
          <p className="small soft">
            Worked out from this very axis. Begin with a fifth of them at the machine, belt off, low current
            limit.
          </p>
          <ul className="small">
            {gains.reasons[structure].map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
          <Scroll label="Gains">
            <table>
              <tbody>
                {Object.entries(words.gains).map(([key, { name, unit, says }]) => (
                  <tr key={key}>
                    <td>
                      {capital(name)}
                      <br />
                      <span className="small soft">{says}</span>
                    </td>
                    <td className="number" style={{ whiteSpace: 'nowrap' }}>
                      {formatNumber(own[key]!, 3)} {unit}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
          <button type="button" onClick={() => onUse(own)}>
            Try these gains
          </button>
        </>
      )}
    </section>
  );
}
