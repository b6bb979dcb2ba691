/** Gain and phase of the open loop against frequency. */
import { scaleLinear, scaleLog } from 'd3-scale';
import { formatNumber, formatQuantity } from '../../../engine/quantity/index.ts';
import type { Margins } from '../../../engine/simulate/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { Levels, pathThrough } from '../../pictures/axes.tsx';

const hertz = (w: number): string => formatQuantity(w / (2 * Math.PI), 'Hz', { digits: 3 });

const HEIGHT = 150;

export function Bode({ margins, width }: { margins: Margins; width: number }) {
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
    pathThrough(
      values.length,
      (at) => x(frequency[at]! / (2 * Math.PI)),
      (at) => y(values[at]!),
    );
  const decades = x.ticks().filter((tick) => Number.isInteger(Math.round(Math.log10(tick) * 1e6) / 1e6));
  const panels = [
    {
      name: 'gain once round the loop',
      path: line(magnitude, gain),
      y: gain,
      ticks: [0.01, 0.1, 1, 10, 100, 1000],
      one: 1,
    },
    {
      name: 'how late, degrees (phase)',
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
      aria-label="Gain once round the loop and its phase against frequency; the numbers stand in the table below."
    >
      {panels.map(({ name, path, y, ticks, one }, at) => (
        <g key={name} transform={`translate(0 ${at * HEIGHT})`} className="axes">
          {decades.map((tick) => (
            <line key={tick} x1={x(tick)} x2={x(tick)} y1={20} y2={HEIGHT - 10} />
          ))}
          <Levels
            ticks={ticks
              .filter((tick) => tick >= Math.min(...y.domain()) && tick <= Math.max(...y.domain()))
              .map((tick) => ({ at: y(tick), text: formatNumber(tick, 4) }))}
            left={46}
            right={width - 8}
            look={({ text }) => (text === formatNumber(one, 4) ? 'limit' : undefined)}
          />
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

export function BodeTable({ margins }: { margins: Margins }) {
  const { frequency, magnitude, phase } = margins.bode;
  const rows = Array.from({ length: 13 }, (_, at) => Math.round((at * (frequency.length - 1)) / 12));
  return (
    <details>
      <summary>As a table</summary>
      <Scroll label="Gain and phase as a table">
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
      </Scroll>
    </details>
  );
}
