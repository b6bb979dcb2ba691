/** What the loop itself has to say, in sentences: how far it is from swinging, and whether the axis hunts at rest. */
import { formatNumber, formatQuantity } from '../quantity/index.ts';
import type { Hunting } from './hunting.ts';
import type { Margins } from './margins.ts';
import { type Saying, short } from './say.ts';

const hertz = (w: number): string => formatQuantity(w / (2 * Math.PI), 'Hz', { digits: 3 });

/** How far the loop is from swinging by itself. */
export function marginsInWords(margins: Margins): string {
  const { gainMargin, phaseMargin, oscillatesAt, steady, crossover } = margins;
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

const CAUSES = {
  play: 'The play in the screw keeps it up. Take up the play, or let the position loop look at the motor instead of the slide.',
  friction:
    'Friction that holds harder from rest than in motion keeps it up: the control pushes until the slide jumps, and jumps too far. Smoother ways and oil help, and so does a control that stops adding up errors of a count or two; adding them up faster makes it worse.',
  counts:
    'The steps of the feedback keep it up: between two counts the control does not see where it is. Finer counts or lower gains help.',
  loop: 'No single part keeps it up: the gains are too high for this axis.',
} as const;

/** Whether it hunts at rest, and what to do about it. */
export function huntingInWords(
  { swing, by, reckoned, watched }: Hunting,
  system: 'mm' | 'in' = 'mm',
): Saying {
  if (by === null)
    return {
      level: 'good',
      sentence: `Pushed off its place and left alone, it comes to rest and lies still: it does not hunt (followed for ${formatNumber(watched, 2)} s).`,
    };
  if (swing === null)
    return {
      level: 'bad',
      sentence: 'Pushed off its place, it swings farther and farther: lower the gains.',
    };
  const often =
    swing.frequency >= 1
      ? `${formatNumber(swing.frequency, 2)} times a second`
      : `once in ${formatNumber(1 / swing.frequency, 2)} s`;
  const second =
    by === 'play' && reckoned
      ? ` Reckoned another way, without moving it: ${short(reckoned.amplitude, system)}, ${formatNumber(reckoned.frequency, 2)} times a second.`
      : '';
  return {
    level: 'doubtful',
    sentence: `At rest it will hunt: to and fro by about ${short(swing.amplitude, system)} to either side, ${often}, without end. ${CAUSES[by]}${second}`,
  };
}
