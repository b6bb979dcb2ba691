/** Every kind of part, and which kind fills which place. Add a kind: its file and one line here. */
import { own } from '../quantity/own.ts';
import { axisDuty } from './axis-duty.ts';
import { belts } from './belts.ts';
import { brake } from './brake.ts';
import { chuck } from './chuck.ts';
import { control } from './control.ts';
import { drive } from './drive.ts';
import { feedback } from './feedback.ts';
import { job } from './job.ts';
import { motor } from './motor.ts';
import { reduction } from './reduction.ts';
import { screw } from './screw.ts';
import { site } from './site.ts';
import { slide } from './slide.ts';
import { spindle } from './spindle.ts';
import { spindleDrive } from './spindle-drive.ts';
import { spindleDuty } from './spindle-duty.ts';
import { spindleFeedback } from './spindle-feedback.ts';
import { spindleMotor } from './spindle-motor.ts';
import { supply } from './supply.ts';
import type { FactSpec, PartKind } from './types.ts';

export { EXAMPLES } from './examples.ts';
export type {
  ChoiceFact,
  ChoicesFact,
  CurveFact,
  FactSpec,
  PartKind,
  QuantityFact,
  TextFact,
} from './types.ts';

/** Places of an axis in the order of its chain: command to slide, then what reports and holds. */
export const AXIS_PLACES = {
  duty: axisDuty,
  drive,
  motor,
  reduction,
  screw,
  slide,
  feedback,
  brake,
} as const;

/** Places of a spindle in the order of its chain: mains to chuck, then what reports back. */
export const SPINDLE_PLACES = {
  'spindle-duty': spindleDuty,
  'spindle-drive': spindleDrive,
  'spindle-motor': spindleMotor,
  belts,
  spindle,
  chuck,
  'spindle-feedback': spindleFeedback,
} as const;

/** Places of a chain, by its kind. */
export const CHAIN_PLACES = { axis: AXIS_PLACES, spindle: SPINDLE_PLACES } as const;

/** Places of the whole machine. */
export const MACHINE_PLACES = { site, supply, control, job } as const;

export const PLACES = { ...MACHINE_PLACES, ...AXIS_PLACES, ...SPINDLE_PLACES } as const;

export type PlaceId = keyof typeof PLACES;
export type FactId<P extends PlaceId> = keyof (typeof PLACES)[P]['facts'] & string;

/** Kinds by their id. */
export const PARTS: Readonly<Record<string, PartKind>> = Object.fromEntries(
  Object.values(PLACES).map((kind) => [kind.id, kind as PartKind]),
);

/** The fact's description, or undefined when the place or fact does not exist. */
export function factSpec(place: string, fact: string): FactSpec | undefined {
  const kind = Object.hasOwn(PLACES, place) ? (PLACES[place as PlaceId] as PartKind) : undefined;
  return kind && own(kind.facts, fact);
}
