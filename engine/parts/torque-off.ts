import type { ChoiceFact } from './types.ts';

/** Whether a drive can be told, past its own electronics, to give no torque: IEC 61800-5-2 calls it safe torque off. */
export const torqueOff: ChoiceFact = {
  kind: 'choice',
  given: true,
  name: 'input for safe torque off',
  trouble: 2,
  options: { none: 'none', one: 'one channel', two: 'two channels', unknown: 'not known' },
  findOut:
    'The list of terminals in its manual: “safe torque off” or STO. Two such inputs, STO1 and STO2, are two channels. An enable input is none of it. Nothing of the kind in the list: none. A plug with a bridge in it often sits on these terminals.',
};

/** Channels by the option; nothing for one that is not known. */
export const TORQUE_OFF_CHANNELS: Readonly<Record<string, number>> = { none: 0, one: 1, two: 2 };
