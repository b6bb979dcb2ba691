/** Writes refit.json and edits.jsonl: the same refit always gives the same text. */
import type {
  Auxiliary,
  Chain,
  Edit,
  Evidence,
  Fact,
  Keep,
  Part,
  Place,
  Refit,
  StopCircuit,
  SurveyItem,
  Tag,
  Wiring,
  WiringDevice,
  Work,
} from './types.ts';

/** The text of refit.json: fields in the order of the format, names in the order of the alphabet. */
export function writeRefit(refit: Refit): string {
  const { format, version, id, name, about, machine } = refit;
  const ordered: Refit = {
    format,
    version,
    id,
    name,
    about,
    machine,
    places: sorted(refit.places, place),
    chains: refit.chains.map(chain),
    parts: sorted(refit.parts, part),
    policies: sorted(refit.policies, same),
    evidence: sorted(refit.evidence, evidence),
    tags: sorted(refit.tags, tag),
    keeps: sorted(refit.keeps, keep),
    survey: sorted(refit.survey, surveyItem),
    stop: refit.stop && stop(refit.stop),
    work: sorted(refit.work, work),
    auxiliaries: sorted(refit.auxiliaries, auxiliary),
    wiring: wiring(refit.wiring),
  };
  return `${JSON.stringify(ordered, null, 2)}\n`;
}

/** The text of edits.jsonl, one edit a line. */
export const writeEdits = (edits: readonly Edit[]): string =>
  edits.map((edit) => `${JSON.stringify(edit)}\n`).join('');

function sorted<T>(record: Readonly<Record<string, T>>, each: (value: T) => T): Record<string, T> {
  const names = Object.keys(record).sort();
  return Object.fromEntries(names.map((name) => [name, each(record[name]!)]));
}

const same = <T>(value: T): T => value;

const place = ({ options, chosen }: Place): Place => ({ options, chosen });
const chain = ({ id, kind, places }: Chain): Chain => ({ id, kind, places: sorted(places, place) });

const part = ({ id, kind, name, facts, condition, notes, photos }: Part): Part => ({
  id,
  kind,
  name,
  facts: sorted(facts, fact),
  ...(condition === undefined ? {} : { condition }),
  ...(notes === undefined ? {} : { notes }),
  ...(photos === undefined ? {} : { photos }),
});

const fact = ({ value, basis, note, evidence }: Fact): Fact => ({
  value,
  basis,
  ...(note === undefined ? {} : { note }),
  ...(evidence === undefined ? {} : { evidence }),
});

const evidence = (each: Evidence): Evidence => ({
  id: each.id,
  method: each.method,
  part: each.part,
  given: sorted(each.given, same),
  readings: sorted(each.readings, same),
  aside: each.aside,
  note: each.note,
  when: each.when,
  photos: each.photos,
});

const tag = (each: Tag): Tag => ({
  id: each.id,
  tag: each.tag,
  cable: each.cable,
  here: each.here,
  there: each.there,
  otherTag: each.otherTag,
  colour: each.colour,
  signal: each.signal,
  note: each.note,
  photos: each.photos,
  state: each.state,
});

const keep = ({ id, what, state, note, photos }: Keep): Keep => ({ id, what, state, note, photos });

const surveyItem = ({ id, state, note, photos, answers }: SurveyItem): SurveyItem => ({
  id,
  state,
  note,
  photos,
  answers: sorted(answers, same),
});

const stop = ({ pattern, note, elements, wires, motions, settings }: StopCircuit): StopCircuit => ({
  pattern,
  note,
  elements: sorted(elements, (each) => ({
    id: each.id,
    kind: each.kind,
    name: each.name,
    settings: sorted(each.settings, same),
  })),
  wires: sorted(wires, ({ id, from, to, cable }) => ({ id, from, to, cable })),
  motions: sorted(motions, (each) => ({
    id: each.id,
    kind: each.kind,
    name: each.name,
    drive: each.drive,
    brake: each.brake,
    settings: sorted(each.settings, same),
  })),
  settings: sorted(settings, same),
});

const work = ({ id, kind, name, settings }: Work): Work => ({
  id,
  kind,
  name,
  settings: sorted(settings, same),
});

const auxiliary = ({ id, kind, name, settings }: Auxiliary): Auxiliary => ({
  id,
  kind,
  name,
  settings: sorted(settings, same),
});

const wiring = ({ devices, wires, cables, settings }: Wiring): Wiring => ({
  devices: sorted(devices, device),
  wires: sorted(wires, (each) => ({
    id: each.id,
    from: each.from,
    to: each.to,
    cable: each.cable,
    settings: sorted(each.settings, same),
  })),
  cables: sorted(cables, ({ id, name, settings, usual }) => ({
    id,
    name,
    settings: sorted(settings, same),
    ...(usual === undefined ? {} : { usual }),
  })),
  settings: sorted(settings, same),
});

const device = (each: WiringDevice): WiringDevice => ({
  id: each.id,
  kind: each.kind,
  name: each.name,
  part: each.part,
  where: each.where,
  settings: sorted(each.settings, same),
  ...(each.usual === undefined ? {} : { usual: each.usual }),
  terminals: sorted(each.terminals, ({ kind, name, settings }) => ({
    kind,
    name,
    settings: sorted(settings, same),
  })),
  pins: sorted(each.pins, ({ photo, x, y }) => ({ photo, x, y })),
});
