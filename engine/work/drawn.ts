/**
 * Work judged draw by draw: the facts in doubt are drawn as for the findings of an axis, and how much harder or easier the
 * material cuts than its table, and how each axis follows; the machine is put together from each draw, and the work is judged on it. So every margin gets its spread and every link the chance that it does not give way.
 */
import { SURE } from '../assess/compare.ts';
import { drawSource } from '../assess/draw-source.ts';
import { type Assessment, drawScopes } from '../assess/index.ts';
import { spreading } from '../assess/spread.ts';
import type { Source } from '../assess/trace.ts';
import { NOTHING } from '../assess/value.ts';
import type { Verdict } from '../quantity/verdict.ts';
import type { Work } from '../refit/types.ts';
import { inOrder, type WorkFinding, worstOf } from './finding.ts';
import { followingDrawn } from './following.ts';
import { type JudgedWork, judgeOne, summaryOf } from './judge.ts';
import { rangeAt } from './limits.ts';
import { machineDrawn, type WorkMachine } from './machine.ts';

/** Draws for a chance of 95 % to be known to about half a percent. */
export const WORK_LANES = 1000;
/**
 * Draws after which work is done with where all of them agree: what happened never in 200 draws happens in less than 1.5 of
 * a hundred, as far as one can be 95 % sure (the rule of three).
 */
const SETTLES = 200;
/** Nearer to one than this a margin is one: the speed that is just allowed stands on its limit. */
const EXACT = 1e-9;

export interface DrawOptions {
  readonly lanes?: number;
  readonly seed?: number;
}

/** Margins of a link in every draw: NaN where nothing is asked of it there, as where no range reaches the speed. A yes-or-no counts 1 where it does not fail, else 0. */
class Tally {
  readonly margins: Float64Array;
  asked = 0;
  fails = 0;
  /** As it stood in a draw in which it failed. */
  failing: WorkFinding | undefined;

  constructor(lanes: number) {
    this.margins = new Float64Array(lanes).fill(Number.NaN);
  }

  /** `isUnknown`: it is not known of the machine as it stands either; what only a draw cannot do counts as failing. */
  put(lane: number, finding: WorkFinding, isUnknown: boolean): void {
    const { margin, verdict } = finding;
    const value =
      typeof margin === 'number'
        ? Math.abs(margin - 1) < EXACT
          ? 1
          : margin
        : margin === null
          ? Number.MAX_VALUE
          : verdict === 'fails' || (verdict === 'unknown' && !isUnknown)
            ? 0
            : 1;
    this.margins[lane] = value;
    this.asked++;
    if (value >= 1) return;
    this.fails++;
    this.failing ??= finding;
  }
}

/** Yields the share done after each draw, so that it can be shown or stopped. */
export function* seekDrawn(
  assessment: Assessment,
  machine: WorkMachine,
  judged: readonly JudgedWork[],
  { lanes = WORK_LANES, seed = 1 }: DrawOptions = {},
): Generator<number, readonly JudgedWork[], void> {
  if (judged.length === 0) return judged;
  const scopes = drawScopes(assessment, (scopeFor) => machineDrawn(machine, scopeFor), { lanes, seed });
  const cutting = drawSource(cuttingForce(machine), lanes, seed, undefined);
  const following = new Map(
    [...machine.axes.values()].map((axis, number) => [
      axis.id,
      followingDrawn(axis, {
        look: machine.habits.look.value,
        loop: machine.habits.loop.value,
        seed,
        number,
      }),
    ]),
  );
  const asPlanned = judged.map(planned);
  const ranges = judged.map((one) => rangeOf(machine, one));
  const tallies = judged.map(() => new Map<string, Tally>());
  const unknown = judged.map(
    ({ findings }) =>
      new Set(findings.filter(({ verdict }) => verdict === 'unknown').map(({ check }) => check)),
  );
  const whole = judged.map(() => 0);
  const done = judged.map(() => 0);
  let open = [...asPlanned.entries()];
  for (let lane = 0; lane < lanes && open.length > 0; lane++) {
    const drawn = machineDrawn(machine, scopes.at(lane), cutting?.[lane], ({ id }) =>
      following.get(id)!(lane),
    );
    for (const [at, work] of open) {
      let fits = true;
      done[at]!++;
      for (const finding of judgeOne(inRange(drawn, ranges[at]), work).findings) {
        let tally = tallies[at]!.get(finding.check);
        if (!tally) {
          tally = new Tally(lanes);
          tallies[at]!.set(finding.check, tally);
        }
        const before = tally.fails;
        tally.put(lane, finding, unknown[at]!.has(finding.check));
        if (tally.fails > before) fits = false;
      }
      if (fits) whole[at]!++;
    }
    if (lane + 1 === SETTLES)
      open = open.filter(([at]) =>
        [...tallies[at]!.values()].some(({ asked, fails }) => fails > 0 && fails < asked),
      );
    yield (lane + 1) / lanes;
  }
  return judged.map((one, at) => withDraws(one, tallies[at]!, whole[at]! / done[at]!, done[at]!));
}

/** One, as far off either way as the policy says. */
const cuttingForce = ({ habits }: WorkMachine): Source => ({
  value: {
    state: 'known',
    value: 1,
    doubt:
      habits.cutting.value > 0
        ? new Map([['force of a cut', habits.cutting.value / Math.sqrt(3)]])
        : new Map(),
    facts: NOTHING,
    policies: new Set([habits.cutting.policy]),
    basis: undefined,
  },
  shape: 'rectangular',
  domain: 'positive',
});

/** All at once. */
export function judgeDrawn(
  assessment: Assessment,
  machine: WorkMachine,
  judged: readonly JudgedWork[],
  options: DrawOptions = {},
): readonly JudgedWork[] {
  const work = seekDrawn(assessment, machine, judged, options);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** The work with the speed it was planned at: a person chooses it once, whatever the machine turns out to be. */
function planned({ work, detail }: JudgedWork): Work {
  if (!detail || detail.kind === 'cut' || !detail.speed) return work;
  return { ...work, settings: { ...work.settings, speed: `${(detail.speed * 30) / Math.PI} r/min` } };
}

/** The belt or gear range the work was planned in, by its id: it too is chosen once. */
function rangeOf({ spindle }: WorkMachine, { detail }: JudgedWork): string | undefined {
  if (!spindle || !detail?.speed) return undefined;
  if (detail.kind === 'tap') return spindle.ranges.find(({ name }) => name === detail.reversal?.range)?.id;
  return rangeAt(spindle, detail.speed)?.id;
}

const inRange = (machine: WorkMachine, kept: string | undefined): WorkMachine =>
  machine.spindle ? { ...machine, spindle: { ...machine.spindle, kept } } : machine;

function withDraws(
  one: JudgedWork,
  tallies: ReadonlyMap<string, Tally>,
  chance: number,
  lanes: number,
): JudgedWork {
  const findings = inOrder([
    ...one.findings.map((finding) => withTally(finding, tallies.get(finding.check))),
    ...onlyDrawn(one.findings, tallies, lanes),
  ]);
  let verdict: Verdict = worstOf(findings);
  if (verdict === 'fits' && chance < SURE) verdict = 'tight';
  const isDoubtful = findings.some((each) => each.chance !== undefined);
  return {
    ...one,
    findings,
    verdict,
    summary: summaryOf(findings, one.detail, verdict, chance),
    ...(isDoubtful ? { draws: { lanes, chance } } : {}),
  };
}

function withTally(finding: WorkFinding, tally: Tally | undefined): WorkFinding {
  if (!tally || finding.verdict === 'unknown') return finding;
  const { margins } = tally;
  const first = margins[0]!;
  if (margins.every((each) => Object.is(each, first) || Math.abs(each - first) <= EXACT * Math.abs(first)))
    return finding;
  const { chance, range } = spreading(margins.filter((each) => !Number.isNaN(each)));
  const verdict = finding.verdict === 'fits' && chance < SURE ? 'tight' : finding.verdict;
  return {
    ...finding,
    verdict,
    chance,
    ...(typeof finding.margin === 'number' ? { marginRange: range } : {}),
  };
}

/** What fails in some draws and is not so much as asked of the machine as it stands. */
function onlyDrawn(
  findings: readonly WorkFinding[],
  tallies: ReadonlyMap<string, Tally>,
  lanes: number,
): readonly WorkFinding[] {
  const asked = new Set(findings.map(({ check }) => check));
  return [...tallies].flatMap(([check, { fails, failing }]): WorkFinding[] => {
    const chance = 1 - fails / lanes;
    if (asked.has(check) || !failing || chance >= SURE) return [];
    const { margin: _margin, asked: _asked, there: _there, ...rest } = failing;
    return [
      {
        ...rest,
        verdict: 'tight',
        chance,
        sentence: `As the machine is known now it does not come to this, but what is in doubt may lead there: ${failing.sentence}`,
      },
    ];
  });
}
