/** Symptoms an old machine shows. Add one: its file and one line here. */
import { alarmStays } from './alarm-stays.ts';
import { axisDrops } from './axis-drops.ts';
import { hums } from './hums.ts';
import { losesPosition } from './loses-position.ts';
import { noAxisMoves } from './no-axis-moves.ts';
import { noThreading } from './no-threading.ts';
import { oneAxisDead } from './one-axis-dead.ts';
import { runsAway } from './runs-away.ts';
import { screenDark } from './screen-dark.ts';
import { spindleSilent } from './spindle-silent.ts';
import { trips } from './trips.ts';
import type { Symptom } from './types.ts';

export { type Diagnosis, diagnose, SKIP } from './diagnose.ts';
export { dangerIn, findSymptoms } from './find.ts';
export type { Cause, FaultTest, Symptom } from './types.ts';

export const SYMPTOMS: readonly Symptom[] = [
  screenDark,
  noAxisMoves,
  oneAxisDead,
  runsAway,
  axisDrops,
  hums,
  spindleSilent,
  noThreading,
  trips,
  alarmStays,
  losesPosition,
];

export const SYMPTOM: ReadonlyMap<string, Symptom> = new Map(SYMPTOMS.map((each) => [each.id, each]));
