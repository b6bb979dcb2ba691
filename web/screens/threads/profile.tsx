/** The profile of a thread, to scale, with its sizes written at it. */
import type { UnitSystem } from '../../../engine/quantity/prefer.ts';
import { basicSizes, boltProfile, type Thread } from '../../../engine/threads/index.ts';
import { useWidth } from '../../pictures/use-width.ts';
import { sayLength } from './say.ts';

interface Props {
  readonly thread: Thread;
  readonly system: UnitSystem;
}

/** Room for the names of the diameters on the right, and for the pitch above. */
const RIGHT = 176;
const NARROW = 420;
const TOP = 46;
const BOTTOM = 34;

export function Profile({ thread, system }: Props) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const angle = Math.round((thread.flankAngle * 180) / Math.PI);
  return (
    <figure className="thread-profile">
      <div ref={ref} style={{ minHeight: 120 }}>
        {width > 0 && <Drawn thread={thread} system={system} width={width} />}
      </div>
      <figcaption className="small soft">
        Three turns of the bolt in section, to scale; the axis lies below. {angle}° between the flanks
        {thread.taper > 0 ? ', drawn without its taper of 1 in 16' : ''}.
      </figcaption>
    </figure>
  );
}

function Drawn({ thread, system, width }: Props & { readonly width: number }) {
  const basic = basicSizes(thread);
  const right = width < NARROW ? 136 : RIGHT;
  const scale = (width - right - 12) / (3 * thread.pitch);
  const depth = (basic.major - basic.root) / 2;
  const height = TOP + depth * scale + BOTTOM;
  const x = (z: number): number => 6 + z * scale;
  const y = (r: number): number => TOP + (basic.major / 2 - r) * scale;
  const outline = boltProfile(thread).map(([z, r]) => `${x(z).toFixed(1)} ${y(r).toFixed(1)}`);
  const end = x(3 * thread.pitch);
  const lines = [
    { name: 'outside', d: basic.major },
    { name: 'pitch', d: basic.pitchDiameter },
    { name: 'root', d: basic.root },
  ];
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Profile of ${thread.designation}: ${lines.map(({ name, d }) => `${name} diameter ${sayLength(d, system)}`).join(', ')}, pitch ${sayLength(thread.pitch, system)}.`}
    >
      <path className="metal" d={`M${outline.join('L')}L${end.toFixed(1)} ${height}L6 ${height}Z`} />
      <path className="edge" d={`M${outline.join('L')}`} />
      {lines.map(({ name, d }) => (
        <g key={name}>
          <line
            className={name === 'pitch' ? 'mark dashed' : 'mark'}
            x1={name === 'pitch' ? 6 : x(2.5 * thread.pitch)}
            x2={end + 10}
            y1={y(d / 2)}
            y2={y(d / 2)}
          />
        </g>
      ))}
      {lines.map(({ name, d }, at) => (
        <text key={name} x={end + 14} y={Math.max(y(d / 2), TOP + at * 22) + 4}>
          ø {sayLength(d, system)}
          <tspan className="soft"> {name}</tspan>
        </text>
      ))}
      <line className="mark" x1={x(0.5 * thread.pitch)} x2={x(0.5 * thread.pitch)} y1={22} y2={TOP} />
      <line className="mark" x1={x(1.5 * thread.pitch)} x2={x(1.5 * thread.pitch)} y1={22} y2={TOP} />
      <line className="edge" x1={x(0.5 * thread.pitch)} x2={x(1.5 * thread.pitch)} y1={28} y2={28} />
      <text x={x(thread.pitch)} y={18} textAnchor="middle">
        pitch {sayLength(thread.pitch, system)}
      </text>
      <text x={6} y={height - 10} className="on-metal">
        depth {sayLength(basic.depth.external, system)}
      </text>
    </svg>
  );
}
