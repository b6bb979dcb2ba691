/** A part in a few words under its sign: what a person would call it by. */
import { PLACES, type PlaceId } from '../../engine/parts/index.ts';
import type { PartKind } from '../../engine/parts/types.ts';
import { raisePowers } from '../../engine/quantity/superscripts.ts';
import type { Fact, Part } from '../../engine/refit/types.ts';

const TELLING: Readonly<Partial<Record<PlaceId, readonly string[]>>> = {
  control: ['highestPulseRate'],
  drive: ['peakCurrent', 'highestVoltage'],
  motor: ['type'],
  reduction: ['type', 'motorTeeth', 'screwTeeth'],
  screw: ['type', 'lead', 'pitch'],
  slide: ['mass', 'slope'],
  feedback: ['type', 'lines'],
  brake: ['torque'],
  duty: ['rapid', 'acceleration'],
  supply: ['secondary', 'ratedVoltage'],
  site: ['phases', 'mains'],
  'spindle-duty': ['topSpeed', 'cutPower'],
  'spindle-drive': ['type', 'continuousCurrent'],
  'spindle-motor': ['power', 'connection'],
  belts: ['type', 'ranges'],
  spindle: ['topSpeed', 'bearings'],
  chuck: ['type', 'topSpeed'],
  'spindle-feedback': ['type', 'lines'],
};

/** A fact's value in words, as typed. */
export function sayFact(kind: PartKind, name: string, fact: Fact): string {
  const spec = kind.facts[name];
  const options = spec && 'options' in spec ? spec.options : {};
  const { value } = fact;
  if (value.kind === 'choice') return options[value.option] ?? value.option;
  if (value.kind === 'choices') return value.options.map((option) => options[option] ?? option).join('; ');
  return raisePowers(value.text);
}

export function sayFactShort(place: PlaceId, part: Part): string {
  const kind = PLACES[place] as PartKind;
  const told = (TELLING[place] ?? []).flatMap((name) => {
    const fact = part.facts[name];
    return fact ? [sayFact(kind, name, fact)] : [];
  });
  return told.length > 0 ? told.slice(0, 2).join(', ') : 'nothing known yet';
}
