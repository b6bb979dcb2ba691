/** What work asks of the thread book and of units, remembered: draw after draw asks the same. */
import { parseQuantity } from '../quantity/index.ts';
import { readSetting } from '../quantity/read-setting.ts';
import { basicSizes, cutOf, parseThread, planThread } from '../threads/index.ts';
import { remember } from './remember.ts';

export const cutFor = remember((operation: string, typed: Readonly<Record<string, string>>) =>
  cutOf(operation, typed),
);

export const settingOf = remember(readSetting);
export const quantityOf = remember((text: string, unit: string) => parseQuantity(text, unit));

/** A thread with its basic sizes. */
export const threadOf = remember((text: string) => {
  const read = parseThread(text);
  return read.ok ? ({ ok: true, thread: read.value, basic: basicSizes(read.value) } as const) : read;
});

export const planFor = remember(planThread);
