/** What is not known for sure, carried into the move: a band instead of a line, and the chance of a trip. */
import { type RefObject, useEffect, useRef, useState } from 'react';
import { formatNumber } from '../../../engine/quantity/index.ts';
import { type Band, bandInWords, type Spread } from '../../../engine/simulate/index.ts';
import { useWidth } from '../../pictures/use-width.ts';
import { getPerson } from '../../state/person.ts';
import type { Movers } from '../../worker/move-client.ts';
import type { AxisModel, Move } from './parts.ts';
import { Says } from './says.tsx';
import { TimeChart } from './time-chart.tsx';

interface Props {
  readonly movers: RefObject<Movers | undefined>;
  readonly model: AxisModel;
  /** The other axis of a circle. */
  readonly second: AxisModel | undefined;
  readonly move: Move;
  readonly spread: readonly Spread[];
}

const RUNS = 1000;

const percent = (share: number): string =>
  share > 0 && share < 0.01 ? 'under 1 %' : `${formatNumber(100 * share, 2)} %`;

export function BandPanel({ movers, model, second, move, spread }: Props) {
  const [band, setBand] = useState<Band>();
  const [done, setDone] = useState<number>();
  const [fault, setFault] = useState('');
  const search = useRef<AbortController>(undefined);
  const [ref, width] = useWidth<HTMLDivElement>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: another model or move makes the band untrue
  useEffect(() => {
    search.current?.abort();
    setBand(undefined);
    setDone(undefined);
    setFault('');
  }, [model, move]);
  useEffect(() => () => search.current?.abort(), []);
  const own = spread.filter(({ path }) => {
    const [group, name] = path.split('.') as [string, string];
    const value = (model as unknown as Record<string, Record<string, unknown> | null>)[group]?.[name];
    return typeof value === 'number' && Number.isFinite(value) && value !== 0;
  });
  const start = (): void => {
    const control = new AbortController();
    search.current = control;
    setBand(undefined);
    setFault('');
    setDone(0);
    movers.current
      ?.band(
        { model, spread: own, move, runs: RUNS, ...(second && move.kind === 'circle' ? { second } : {}) },
        setDone,
        control.signal,
      )
      .then(setBand, (error: Error) => {
        if (error.name !== 'AbortError') setFault(error.message);
      })
      .finally(() => setDone(undefined));
  };
  return (
    <section className="sheet stack" aria-labelledby="band">
      <h2 id="band">And if the numbers are a little off?</h2>
      {own.length === 0 ? (
        <p>No number of this axis carries a doubt: the line above is all there is to say.</p>
      ) : (
        <p>
          {own.length} numbers of this axis are in doubt (
          {own
            .slice(0, 4)
            .map(({ path, share }) => `${sayPath(path)} ±${percent(share)}`)
            .join(', ')}
          {own.length > 4 ? ' …' : ''}). {RUNS} axes are made up within that doubt, and each one moves.
        </p>
      )}
      {own.length > 0 && done === undefined && (
        <button type="button" onClick={start}>
          Move {RUNS} of them
        </button>
      )}
      {done !== undefined && (
        <div className="row">
          <progress value={done} max={RUNS} aria-label="Axes moved" />
          <span>{done}</span>
          <button type="button" onClick={() => search.current?.abort()}>
            Stop
          </button>
        </div>
      )}
      {fault && <p className="bad">{fault}</p>}
      {band && (
        <>
          <div aria-live="polite">
            <Says says={bandInWords(band, getPerson().system)} />
          </div>
          <div ref={ref}>
            {width > 0 && (
              <TimeChart
                panels={[
                  {
                    name: 'Behind the command, nine of ten',
                    unit: 'µm',
                    lines: [{ name: 'half of them', values: band.middle, time: band.time, look: 'main' }],
                    band: { time: band.time, low: band.low, high: band.high },
                  },
                ]}
                events={[]}
                width={width}
                until={band.time.at(-1)!}
              />
            )}
          </div>
        </>
      )}
    </section>
  );
}

const sayPath = (path: string): string => path.split('.')[1]!.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);
