/** A circle with its deviation drawn large: where an axis turns, a mark stands. */
import { formatQuantity } from '../../../engine/quantity/index.ts';
import type { Run } from './parts.ts';

type Circle = NonNullable<Run['circle']>;

/** A round number that, drawn as a fifth of the radius, shows the largest deviation well. */
function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return [1, 2, 5, 10].map((each) => each * power).find((each) => each >= value) ?? value;
}

const path = (circle: Circle, middle: number, radius: number, scale: number): string =>
  `${Array.from(circle.byDegree, (deviation, degree) => {
    if (!Number.isFinite(deviation)) return '';
    const r = radius + deviation * scale;
    const angle = (degree * Math.PI) / 180;
    return `${degree === 0 ? 'M' : 'L'}${(middle + r * Math.cos(angle)).toFixed(1)} ${(middle - r * Math.sin(angle)).toFixed(1)}`;
  }).join('')}Z`;

export function CircleChart({ now, kept, width }: { now: Circle; kept: Circle | undefined; width: number }) {
  const middle = width / 2;
  const radius = width * 0.36;
  const most = Math.max(
    1e-9,
    ...[now, kept].flatMap((each) => (each ? [...each.byDegree].filter(Number.isFinite).map(Math.abs) : [])),
  );
  const division = roundUp(most);
  const scale = (radius * 0.3) / division;
  return (
    <svg
      className="chart circle-chart"
      width={width}
      height={width}
      viewBox={`0 0 ${width} ${width}`}
      role="img"
      aria-label={`The circle driven, its deviation drawn large; out of round by ${formatQuantity(now.roundness, 'µm', { digits: 3 })}`}
    >
      <g className="axes">
        {[-1, 0, 1].map((each) => (
          <circle
            key={each}
            cx={middle}
            cy={middle}
            r={radius + each * division * scale}
            fill="none"
            className={each === 0 ? 'true-circle' : 'division'}
          />
        ))}
        <text x={middle} y={middle - 4} textAnchor="middle" className="title">
          one ring to the next:
        </text>
        <text x={middle} y={middle + 14} textAnchor="middle" className="title">
          {formatQuantity(division, 'µm', { digits: 3 })}
        </text>
      </g>
      {kept && <path className="trace other" fill="none" d={path(kept, middle, radius, scale)} />}
      <path className="trace main" fill="none" d={path(now, middle, radius, scale)} />
    </svg>
  );
}
