/** What tells a screw that can be made good from one that cannot. */
import { convert, formatQuantity } from '../../quantity/index.ts';
import type { PartFacts } from '../part-facts.ts';
import type { Reason, TestResult } from '../types.ts';

const PRACTICE = 'common practice, no source';
/** Difference of play, as a share of the tolerance, that nobody can set right by one number. */
const UNEVEN = 0.5;

const say = (metres: number): string => formatQuantity(metres, 'mm', { digits: 2 });

export function screwTests({ value }: PartFacts): TestResult[] {
  const worst = value('screw', 'playWorst');
  const least = value('screw', 'playLeast');
  if (worst === undefined) return [];
  const title = 'Play along the travel';
  if (least === undefined)
    return [
      {
        title,
        source: PRACTICE,
        level: 'note',
        sentence: `${say(worst)} where it worked most. Measure it near an end as well: only the difference tells whether the thread itself has worn.`,
      },
    ];
  const uneven = worst - least;
  const tolerance = value('duty', 'tolerance');
  const limit = tolerance === undefined ? 0.02e-3 : UNEVEN * tolerance;
  return [
    uneven > limit
      ? {
          title,
          source: PRACTICE,
          level: 'bad',
          sentence: `${say(worst)} where it worked most and ${say(least)} elsewhere: the thread is worn in one place.`,
        }
      : {
          title,
          source: PRACTICE,
          level: worst > 0.1e-3 ? 'doubtful' : 'good',
          sentence: `${say(worst)} at most and ${say(least)} at least: it is the same all along, to ${say(Math.max(0, uneven))}.`,
        },
  ];
}

export function screwReasons({ value, choice }: PartFacts): Reason[] {
  const reasons: Reason[] = [];
  const worst = value('screw', 'playWorst');
  const least = value('screw', 'playLeast');
  const tolerance = value('duty', 'tolerance');
  const kind = choice('screw', 'type');
  const rolling = kind === 'ball' || kind === 'roller';
  if (worst !== undefined && least !== undefined) {
    const uneven = worst - least;
    const limit = tolerance === undefined ? 0.02e-3 : UNEVEN * tolerance;
    if (uneven > limit)
      reasons.push({
        towards: 'replace',
        source: PRACTICE,
        sentence: `It is worn in one place: the play differs by ${say(uneven)} along the travel. Compensation takes off one number everywhere, so it cannot put that right, and a new nut that is tight at the ends would bind there or stay loose in the middle. Regrind it with a new nut, or replace it.`,
      });
    else if (worst > 0.1e-3)
      reasons.push({
        towards: 'repair',
        source: PRACTICE,
        sentence: rolling
          ? 'Its play is the same all along: larger balls or a preloaded nut takes it up.'
          : 'Its play is the same all along: a new or a split nut takes it up, and what is left can be compensated.',
      });
    else
      reasons.push({
        towards: 'keep',
        source: PRACTICE,
        sentence: 'Its play is small and the same all along.',
      });
    if (tolerance === undefined && uneven > 0)
      reasons.push({
        towards: 'note',
        source: PRACTICE,
        sentence: `No tolerance is wanted yet, so ${convert(limit, 'mm')} mm was taken as what matters.`,
      });
  } else
    reasons.push({
      towards: 'note',
      source: PRACTICE,
      sentence:
        'Measure its play in the middle and near an end: play that is the same all along can be taken up or compensated, play in one place cannot.',
    });
  return reasons;
}
