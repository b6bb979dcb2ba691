/** How fast each link lets the spindle turn: bars on one scale, with the speed that is wanted. */
import { capital } from '../../../engine/quantity/words.ts';
import { type LinkLimit, noPermission } from '../../../engine/work/index.ts';
import { rpm } from './say.ts';

interface Props {
  readonly limits: readonly LinkLimit[];
  readonly speed: number | null;
}

/** The scale ends here times the wanted speed or the lowest limit, whichever is more. */
const BEYOND = 2.5;

export function SpeedBars({ limits, speed }: Props) {
  const known = limits.flatMap((each) => (each.speed === null ? [] : [each.speed]));
  const lowest = Math.min(...known, Number.POSITIVE_INFINITY);
  const most = BEYOND * Math.max(speed ?? 0, Number.isFinite(lowest) ? lowest : 0);
  const share = (each: number): string => `${Math.min(100, (100 * each) / most).toFixed(1)}%`;
  const refused = noPermission(limits);
  return (
    <ul className="speed-bars" aria-label="Spindle speed that each link allows">
      {refused !== null && (
        <li className="legend bad">
          <span>{capital(refused)}. Each bar is one link for itself; it permits no speed.</span>
        </li>
      )}
      {limits.map((limit) => {
        const isLowest = limit.speed === lowest;
        const isPassed = limit.speed !== null && speed !== null && speed > limit.speed * (1 + 1e-9);
        return (
          <li key={limit.id} className={isPassed ? 'passed' : isLowest ? 'lowest' : ''}>
            <span className="name">
              {limit.name}
              {isLowest && <span className="small soft"> gives way first</span>}
              {isPassed && <span className="small bad"> is passed</span>}
            </span>
            <span className="bar" aria-hidden="true">
              {limit.speed !== null && <span className="fill" style={{ width: share(limit.speed) }} />}
              {speed !== null && <span className="wanted" style={{ left: share(speed) }} />}
            </span>
            <span className="number">{rpm(limit.speed)}</span>
          </li>
        );
      })}
      {speed !== null && (
        <li className="legend small soft">
          <span className="name">The upright line is the wanted speed, {rpm(speed)}.</span>
        </li>
      )}
    </ul>
  );
}
