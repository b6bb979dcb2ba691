/** What a spindle drive tells the control: that it has no fault, that the speed is reached. */
import type { Build } from './build.ts';
import type { Felt } from './feedback.ts';
import type { Question } from './questions.ts';
import type { Control } from './ways-in.ts';

const CONTACTS = [
  ['ready-output', '43', '44', 'a contact that tells it is ready, that is, has no fault'],
  ['at-speed-output', '53', '54', 'a contact that closes once the set speed is reached'],
] as const;

/** Wires the contacts it is said to have; asks about those nobody has spoken of. */
export function proposeContacts(build: Build, drive: string, control: Control): Felt {
  const questions: Question[] = [];
  const left: string[] = [];
  for (const [setting, near, far, what] of CONTACTS) {
    const device = build.devices.get(drive)!;
    if (!Object.hasOwn(device.settings, setting)) {
      questions.push({
        id: `${drive}.${setting}`,
        asks: `${drive} (${device.name}): does it have ${what}?`,
        place: { of: 'device', id: drive, setting },
        options: ['yes', 'no'],
      });
      continue;
    }
    // One that is wired serves somebody already.
    if (!build.has(`${drive}.${far}`) || build.taken(`${drive}.${far}`)) continue;
    const input = control.freeInputs()[0];
    if (!input) {
      left.push(`${drive}: ${what} is not brought to the control, since no input of ${control.id} is free.`);
      continue;
    }
    build.wire(control.other(input), `${drive}.${near}`);
    build.wire(`${drive}.${far}`, input.id);
  }
  return { questions, left };
}
