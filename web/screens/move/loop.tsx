/** The loop in frequency: how far it is from swinging by itself, and gains to begin with. */
import { scaleLinear, scaleLog } from 'd3-scale';
import { type RefObject, useEffect, useState } from 'react';
import { formatNumber, formatQuantity } from '../../../engine/quantity/index.ts';
import type { Margins } from '../../../engine/simulate/index.ts';
import { useWidth } from '../../pictures/use-width.ts';
import type { Movers } from '../../worker/move-client.ts';
import type { LoopAnswer } from '../../worker/move-protocol.ts';
import type { AxisModel } from './parts.ts';

interface Props {
  readonly movers: RefObject<Movers | undefined>;
  readonly model: AxisModel;
  readonly onUse: (gains: Readonly<Record<string, number>>) => void;
}

const hertz = (w: number): string => formatQuantity(w / (2 * Math.PI), 'Hz', { digits: 3 });

export function LoopPanel({ movers, model, onUse }: Props) {
  const [loop, setLoop] = useState<LoopAnswer>();
  const [ref, width] = useWidth<HTMLDivElement>();
  useEffect(() => {
    let current = true;
    const rest = setTimeout(() => {
      movers.current?.loop(model).then(
        (got) => current && setLoop(got),
        () => current && setLoop(undefined),
      );
    }, 120);
    return () => {
      current = false;
      clearTimeout(rest);
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
      {margins && <p>{sayMargins(margins)}</p>}
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

function sayMargins({ gainMargin, phaseMargin, oscillatesAt, steady, crossover }: Margins): string {
  if (!steady)
    return oscillatesAt === null
      ? 'With these gains the loop does not come to rest.'
      : `With these gains the loop swings by itself, at about ${hertz(oscillatesAt)}.`;
  const gain =
    gainMargin === Number.POSITIVE_INFINITY || oscillatesAt === null
      ? 'No gain by itself would make it swing.'
      : `All gains together may grow ${formatNumber(gainMargin, 2)} times before it swings, at ${hertz(oscillatesAt)}.`;
  const phase =
    phaseMargin === null || crossover === null
      ? ''
      : ` It answers up to ${hertz(crossover)} with ${formatQuantity(phaseMargin, 'deg', { digits: 2 })} in hand (phase margin); 45° or more is usual.`;
  return gain + phase;
}

const HEIGHT = 150;

function Bode({ margins, width }: { margins: Margins; width: number }) {
  const { frequency, magnitude, phase } = margins.bode;
  const x = scaleLog([frequency[0]! / (2 * Math.PI), frequency.at(-1)! / (2 * Math.PI)], [46, width - 8]);
  const seen = [...magnitude].filter((value) => value > 1e-4 && value < 1e5);
  const gain = scaleLog(
    [Math.max(1e-3, Math.min(...seen)), Math.min(1e4, Math.max(...seen))],
    [HEIGHT - 10, 20],
  ).clamp(true);
  const degrees = [...phase].map((each) => (each * 180) / Math.PI);
  const turn = scaleLinear(
    [Math.max(-400, Math.min(...degrees)), Math.max(0, ...degrees)],
    [HEIGHT - 10, 20],
  ).clamp(true);
  const line = (values: readonly number[] | Float64Array, y: (value: number) => number): string =>
    Array.from(
      values,
      (value, at) =>
        `${at === 0 ? 'M' : 'L'}${x(frequency[at]! / (2 * Math.PI)).toFixed(1)} ${y(value).toFixed(1)}`,
    ).join('');
  const decades = x.ticks().filter((tick) => Number.isInteger(Math.round(Math.log10(tick) * 1e6) / 1e6));
  const panels = [
    {
      name: 'gain of the open loop',
      path: line(magnitude, gain),
      y: gain,
      ticks: [0.01, 0.1, 1, 10, 100, 1000],
      one: 1,
    },
    {
      name: 'phase, degrees',
      path: line(degrees, turn),
      y: turn,
      ticks: [0, -90, -180, -270, -360],
      one: -180,
    },
  ];
  return (
    <svg
      className="chart"
      width={width}
      height={2 * HEIGHT + 34}
      viewBox={`0 0 ${width} ${2 * HEIGHT + 34}`}
      role="img"
      aria-label="Gain and phase of the open loop against frequency; the numbers stand in the table below."
    >
      {panels.map(({ name, path, y, ticks, one }, at) => (
        <g key={name} transform={`translate(0 ${at * HEIGHT})`} className="axes">
          {decades.map((tick) => (
            <line key={tick} x1={x(tick)} x2={x(tick)} y1={20} y2={HEIGHT - 10} />
          ))}
          {ticks
            .filter((tick) => tick >= Math.min(...y.domain()) && tick <= Math.max(...y.domain()))
            .map((tick) => (
              <g key={tick}>
                <line
                  className={tick === one ? 'limit' : undefined}
                  x1={46}
                  x2={width - 8}
                  y1={y(tick)}
                  y2={y(tick)}
                />
                <text x={40} y={y(tick) + 4} textAnchor="end">
                  {formatNumber(tick, 4)}
                </text>
              </g>
            ))}
          <path className="trace main" d={path} fill="none" />
          <text className="title" x={46} y={13}>
            {name}
          </text>
        </g>
      ))}
      <g transform={`translate(0 ${2 * HEIGHT})`} className="axes">
        {decades.map((tick) => (
          <text key={tick} x={x(tick)} y={10} textAnchor="middle">
            {formatNumber(tick, 4)}
          </text>
        ))}
        <text className="title" x={width - 8} y={28} textAnchor="end">
          frequency, Hz
        </text>
      </g>
    </svg>
  );
}

function BodeTable({ margins }: { margins: Margins }) {
  const { frequency, magnitude, phase } = margins.bode;
  const rows = Array.from({ length: 13 }, (_, at) => Math.round((at * (frequency.length - 1)) / 12));
  return (
    <details>
      <summary>As a table</summary>
      <div className="scroll">
        <table>
          <thead>
            <tr>
              <th className="number">Frequency</th>
              <th className="number">Gain</th>
              <th className="number">Phase</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((at) => (
              <tr key={at}>
                <td className="number">{hertz(frequency[at]!)}</td>
                <td className="number">{formatNumber(magnitude[at]!, 3)}</td>
                <td className="number">{formatQuantity(phase[at]!, 'deg', { digits: 3 })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
