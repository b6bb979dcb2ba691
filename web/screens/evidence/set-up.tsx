/** The drawing of a set-up, from the method's own lines, in the colours of the page. */
import type { Drawing, Shape } from '../../../engine/evidence/index.ts';

const SIZE = { width: 320, height: 200 };

const points = (of: readonly (readonly [number, number])[]): string => of.map((at) => at.join(',')).join(' ');

export function SetUp({ drawing }: { drawing: Drawing }) {
  return (
    <figure className="bench-drawing">
      <svg viewBox={`-4 -4 ${SIZE.width + 8} ${SIZE.height + 8}`} role="img" aria-label={drawing.says}>
        {drawing.shapes.map((shape, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the shapes of a drawing never change their order
          <Drawn key={i} shape={shape} />
        ))}
      </svg>
      <figcaption className="small soft">{drawing.says}</figcaption>
    </figure>
  );
}

function Drawn({ shape }: { shape: Shape }) {
  switch (shape.kind) {
    case 'line': {
      const { style } = shape;
      if (style === 'closed') return <polygon className="closed" points={points(shape.points)} />;
      return (
        <>
          <polyline className={style} points={points(shape.points)} />
          {style === 'arrow' && <Head from={shape.points.at(-2)} to={shape.points.at(-1)} />}
        </>
      );
    }
    case 'circle': {
      const [cx, cy] = shape.centre;
      return <circle className={shape.filled ? 'filled' : 'plain'} cx={cx} cy={cy} r={shape.radius} />;
    }
    case 'arc':
      return <Arc {...shape} />;
    case 'text': {
      const [x, y] = shape.at;
      return (
        <text x={x} y={y} textAnchor={shape.anchor}>
          {shape.text}
        </text>
      );
    }
  }
}

function Arc({ centre, radius, from, to, arrow }: Extract<Shape, { kind: 'arc' }>) {
  const [cx, cy] = centre;
  if (Math.abs(to - from) >= 360) return <circle className="plain" cx={cx} cy={cy} r={radius} />;
  const at = (degrees: number): [number, number] => {
    const angle = (degrees * Math.PI) / 180;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  };
  const [start, end] = [at(from), at(to)];
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  const sweep = to > from ? 1 : 0;
  return (
    <>
      <path
        className="plain"
        d={`M${start.join(' ')}A${radius} ${radius} 0 ${large} ${sweep} ${end.join(' ')}`}
      />
      {arrow && <Head from={at(to - Math.sign(to - from) * Math.min(12, Math.abs(to - from)))} to={end} />}
    </>
  );
}

type Point = readonly [number, number];

function Head({ from, to }: { from: Point | undefined; to: Point | undefined }) {
  if (!from || !to) return null;
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const wing = (turn: number): Point => [
    to[0] + 8 * Math.cos(angle + turn),
    to[1] + 8 * Math.sin(angle + turn),
  ];
  return <polygon className="filled" points={points([to, wing(Math.PI - 0.4), wing(Math.PI + 0.4)])} />;
}
