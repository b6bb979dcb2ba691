/** How round a circle came out, and what makes it so. */
import type { DeviationParts, Roundness } from './run.ts';
import { type Say, short } from './say.ts';

const NAMES: Readonly<Record<keyof DeviationParts, string>> = {
  lag: 'that the motors lag behind their commands',
  play: 'play in the screws',
  yielding: 'what screws and nuts yield under friction and weight',
};

/** m below which a part is not worth a word. */
const WORTH = 5e-8;

/** `atMotor`: the position loop looks at the motor. */
export function sayCircle(
  say: Say,
  { roundness, parts, meanRadius }: Roundness,
  atMotor: boolean,
  system: 'mm' | 'in',
): void {
  const radius =
    Math.abs(meanRadius) < WORTH
      ? ''
      : `, and on the whole ${short(meanRadius, system)} too ${meanRadius < 0 ? 'small' : 'large'} in radius`;
  say(
    roundness > 2e-5 ? 'doubtful' : 'good',
    `The circle is out of round by ${short(roundness, system)}${radius}.`,
  );
  const told = (Object.keys(NAMES) as (keyof DeviationParts)[])
    .filter((each) => Math.abs(parts[each]) > WORTH)
    .sort((a, b) => parts[b] - parts[a]);
  if (told.length === 0) return;
  const list = told.map(
    (each) => `${parts[each] < 0 ? '−' : ''}${short(parts[each], system)} is ${NAMES[each]}`,
  );
  say(
    'note',
    `Of these ${short(roundness, system)}, ${list.join('; ')}. The lag is measured at the motors; the rest comes between motor and slide${atMotor ? ', where the feedback does not see it' : ''}.`,
  );
}
