/** What the looking through comes to: one answer for each stop, for restarting, for faults, for places. */
import type { Verdict } from '../../quantity/verdict.ts';
import type { StopAnalysis } from './analyse.ts';
import { brakeFindings } from './brake-findings.ts';
import { faultFinding, unnoticedFinding } from './fault-findings.ts';
import { guardFindings, placeFindings } from './place-findings.ts';
import { propCaution } from './prop.ts';
import { restart } from './rest-findings.ts';
import { stopFindings } from './stop-findings.ts';
import { torqueOffFinding } from './torque-off-findings.ts';
import { groundedFindings, groundsOf } from './unsettled.ts';

export interface StopFinding {
  /** 'stop.runs', 'stop.act.S1', 'stop.X.brake': never that of a finding of the whole refit. */
  readonly id: string;
  readonly title: string;
  readonly verdict: Verdict;
  readonly sentence: string;
  /** The same in pieces, one for each motion, where it speaks of several: to be shown below each other. */
  readonly pieces?: readonly string[];
  /** What would make it fit, where it does not. */
  readonly remedy?: string;
  /** What to do first where somebody could get hurt: prop an axis that drops. */
  readonly caution?: string;
}

export type Looked = Omit<StopAnalysis, 'findings' | 'estimate' | 'notExamined'>;

/** What the others rest on stands first, where it fails; then that it is not wired so, where it is not. */
export function findingsOf(looked: Looked, asWired?: StopFinding): readonly StopFinding[] {
  const own = foundOf(looked);
  const found = !asWired ? own : asWired.verdict === 'fits' ? [...own, asWired] : [asWired, ...own];
  return looked.base.model.motions.length === 0 ? found : groundedFindings(groundsOf(looked), found);
}

function foundOf(looked: Looked): readonly StopFinding[] {
  const { base } = looked;
  if (base.model.motions.length === 0)
    return [
      {
        id: 'stop.runs',
        title: 'Can the machine be started?',
        verdict: 'unknown',
        sentence: 'The circuit does not say what it stops: name an axis or a spindle.',
      },
    ];
  const unseen = propCaution(
    base.model,
    [],
    base.model.motions.filter((_, at) => !base.runs.includes(at)),
  );
  const caution = unseen === undefined ? {} : { caution: unseen };
  const missing = base.model.motions.filter((_, at) => !base.runs.includes(at)).map(({ id }) => id);
  if (base.runs.length === 0)
    return [
      {
        id: 'stop.runs',
        title: 'Can the machine be started?',
        verdict: 'fails',
        sentence:
          'As drawn, nothing runs after the power is on and every start has been pressed. Nothing more can be examined.',
        remedy: 'Look in the picture where the current ends.',
        ...caution,
      },
    ];
  return [
    {
      id: 'stop.runs',
      title: 'Can the machine be started?',
      verdict: missing.length === 0 ? 'fits' : 'fails',
      sentence:
        missing.length === 0
          ? 'Everything runs after a start.'
          : `${missing.join(', ')} cannot be started as drawn.`,
      ...caution,
    },
    ...stopFindings(looked),
    ...brakeFindings(looked),
    ...torqueOffFinding(looked),
    restart(looked),
    faultFinding(looked),
    unnoticedFinding(looked),
    ...placeFindings(looked),
    ...guardFindings(looked),
  ];
}
