/** Work, auxiliaries, devices and wires in words. */
import { brief } from './brief.ts';
import { same } from './same.ts';
import type { Auxiliary, Change, WiringCable, WiringDevice, WiringWire, Work } from './types.ts';
import { usualNames, type WithSettings } from './usual.ts';

export type WiringChange = Extract<Change, { do: 'work' | 'auxiliary' | 'device' | 'wire' | 'cable' }>;
type Thing = NonNullable<WiringChange['new']>;

/** What a change is about: 'device K1', 'thread M20x1.5'. */
export function wiringSubject(change: WiringChange): string {
  const thing = change.new ?? change.old;
  const name = thing && 'name' in thing ? brief(thing.name) : '';
  switch (change.do) {
    case 'work':
      return `${(thing as Work | null)?.kind ?? 'work'} ${name || change.id}`;
    case 'auxiliary':
      return name || `auxiliary ${change.id}`;
    case 'device':
    case 'cable':
    case 'wire':
      return `${change.do} ${change.id}`;
  }
}

/** 'wire w12: K1.A1 to PS1.+ added'. */
export function sayWiring(change: WiringChange): string {
  const subject = wiringSubject(change);
  if (change.new === null) return `${subject}: taken out`;
  if (change.old === null) return `${subject}: ${sayThing(change.do, change.new)} added`;
  const changed = Object.keys({ ...change.old, ...change.new }).filter(
    (key) => !same((change.old as unknown as Fields)[key], (change.new as unknown as Fields)[key]),
  );
  const said = changed.map((key) => sayField(key, change.old!, change.new!)).filter((each) => each !== '');
  return `${subject}: ${said.length === 0 ? 'unchanged' : brief(said.join(', '))}`;
}

/** What stands there. */
export function sayThing(kind: WiringChange['do'], thing: Thing): string {
  switch (kind) {
    case 'work':
    case 'auxiliary':
    case 'device':
      return brief((thing as Work | Auxiliary | WiringDevice).name || thing.id);
    case 'wire':
      return `${(thing as WiringWire).from} to ${(thing as WiringWire).to}`;
    case 'cable':
      return brief((thing as WiringCable).name || thing.id);
  }
}

type Fields = Readonly<Record<string, unknown>>;

function sayField(field: string, before: Thing, after: Thing): string {
  const was = (before as unknown as Fields)[field];
  const is = (after as unknown as Fields)[field];
  if (field === 'usual') return sayUsual(before as WithSettings, after as WithSettings);
  if (field !== 'settings') return typeof is === 'string' ? `${field} ${brief(is)}` : `${field} changed`;
  const names = Object.keys({ ...(was as Fields), ...(is as Fields) });
  return names
    .filter((name) => (was as Fields)[name] !== (is as Fields)[name])
    .map((name) => {
      const text = (is as Fields)[name];
      return text === undefined ? `${name} taken out` : `${name} ${brief(String(text))}`;
    })
    .join(', ');
}

/** What was only usual and is now stated with the same words, and what is taken as usual; the rest is said with the settings. */
function sayUsual(before: WithSettings, after: WithSettings): string {
  const [was, is] = [usualNames(before), usualNames(after)];
  const stated = was.filter((name) => !is.includes(name) && after.settings[name] === before.settings[name]);
  const taken = is.filter((name) => !was.includes(name));
  return [
    ...stated.map((name) => `${name} looked at, ${brief(after.settings[name]!)}`),
    ...(taken.length === 0 ? [] : [`${taken.join(', ')} as usual`]),
  ].join(', ');
}
