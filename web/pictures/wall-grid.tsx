/** The paper of the wall charts: travel of one turn across, spindle speed up, both logarithmic. */
import { Levels } from './axes.tsx';

/** Millimetres; what lies beyond is only said. */
export const LEADS = [0.25, 24] as const;
const TICKS = [0.25, 0.5, 1, 2, 4, 8, 16];

/** Turns a minute. */
export const turns = (speed: number): number => (speed * 30) / Math.PI;

interface Props {
  /** Pixels of a travel in millimetres. */
  readonly x: (lead: number) => number;
  /** Pixels of a speed in turns a minute. */
  readonly y: (speed: number) => number;
  /** Speeds that are marked, turns a minute. */
  readonly speeds: readonly number[];
  /** Left, right, top and bottom, pixels. */
  readonly frame: readonly [left: number, right: number, top: number, bottom: number];
}

export function WallGrid({ x, y, speeds, frame: [left, right, top, bottom] }: Props) {
  return (
    <>
      <Levels
        ticks={speeds.map((speed) => ({ at: y(speed), text: String(speed) }))}
        left={left}
        right={right}
        look={() => 'mark'}
      />
      {TICKS.map((lead) => (
        <g key={lead}>
          <line className="mark" x1={x(lead)} x2={x(lead)} y1={top} y2={bottom} />
          <text x={x(lead)} y={bottom + 17} textAnchor="middle">
            {lead}
          </text>
        </g>
      ))}
    </>
  );
}
