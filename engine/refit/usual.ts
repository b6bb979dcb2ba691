/** Settings of the wiring that nobody stated: they were taken because they are usual, and wait to be looked at. */
import { own } from '../quantity/own.ts';

/** A device or a cable. */
export interface WithSettings {
  readonly settings: Readonly<Record<string, string>>;
  /** Names of settings that are only taken as usual; one that no setting bears means nothing. */
  readonly usual?: readonly string[];
}

/** Whether a setting stands there only because it is usual. */
export const isUsual = ({ settings, usual }: WithSettings, name: string): boolean =>
  usual?.includes(name) === true && own(settings, name) !== undefined;

/** Names of the settings that stand there only because they are usual, each once. */
export const usualNames = (thing: WithSettings): readonly string[] =>
  thing.usual === undefined ? [] : [...new Set(thing.usual)].filter((name) => isUsual(thing, name));

/** With a setting stated, or taken out where the text is empty: either way it is no longer only usual. */
export function withStated<T extends WithSettings>(thing: T, name: string, text: string): T {
  const { [name]: _old, ...rest } = thing.settings;
  return marked(
    { ...thing, settings: text === '' ? rest : { ...rest, [name]: text } },
    (thing.usual ?? []).filter((each) => each !== name),
  );
}

/** With settings taken as usual; what is stated already stays as it is stated. */
export function withUsual<T extends WithSettings>(thing: T, taken: Readonly<Record<string, string>>): T {
  const fresh = Object.entries(taken).filter(([name]) => own(thing.settings, name) === undefined);
  if (fresh.length === 0) return thing;
  return marked({ ...thing, settings: { ...thing.settings, ...Object.fromEntries(fresh) } }, [
    ...new Set([...(thing.usual ?? []), ...fresh.map(([name]) => name)]),
  ]);
}

function marked<T extends WithSettings>(thing: T, usual: readonly string[]): T {
  const { usual: _were, ...rest } = thing;
  return (usual.length === 0 ? rest : { ...rest, usual: [...usual].sort() }) as T;
}
