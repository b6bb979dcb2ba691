/** What happens to an axis under way, from its agenda and from its plant, and how it is noted. */
import type { Due } from './agenda.ts';
import type { AxisRun } from './axis-run.ts';
import type { EventKind } from './events.ts';
import { type Ending, LOAD } from './modes.ts';

export function happen(run: AxisRun, due: Due, t: number): void {
  const { plant, events, axis } = run;
  if (due === 'law') return;
  if (due === 'drive-off') {
    run.switchOff(t);
    return;
  }
  if (due === 'brake-holds') {
    const c = plant.constants;
    plant.setConstants({ ...c, T1: c.T1 + run.model.brake!.torque });
  } else plant.u[LOAD] = run.weight + (due === 'force-on' ? run.force * run.r : 0);
  events.add(due, t, axis);
}

/** Takes down what ended a mode of the plant. */
export function noteEnding(run: AxisRun, ending: Ending | 'stuck', time: number): void {
  const kind = EVENT_OF[ending];
  if (!kind) return;
  run.events.add(kind, time, run.axis);
  if (kind === 'voltage-limit') run.notes.cutVoltage(time, 0, ending === 'voltage+' ? 1 : -1);
  if (kind === 'current-limit') run.notes.cutCurrent(time, 0, ending === 'current+' ? 1 : -1);
}

const EVENT_OF: Partial<Readonly<Record<Ending | 'stuck', EventKind>>> = {
  stuck: 'stick',
  'slide-breaks+': 'slip',
  'slide-breaks-': 'slip',
  'touch+': 'play-crossed',
  'touch-': 'play-crossed',
  leave: 'flank-left',
  'current+': 'current-limit',
  'current-': 'current-limit',
  'voltage+': 'voltage-limit',
  'voltage-': 'voltage-limit',
};
