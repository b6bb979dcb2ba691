/** What one person prefers, kept in their browser. */
import { useSyncExternalStore } from 'react';
import type { UnitSystem } from '../../engine/quantity/prefer.ts';

export interface Person {
  readonly who: string;
  readonly system: UnitSystem;
  readonly theme: 'auto' | 'light' | 'dark';
}

const KEY = 'fettle-person';
const USUAL: Person = { who: 'somebody', system: 'mm', theme: 'auto' };
const listeners = new Set<() => void>();

function load(): Person {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    const read = typeof kept === 'object' && kept !== null ? (kept as Partial<Person>) : {};
    return {
      who: typeof read.who === 'string' && read.who.trim() !== '' ? read.who.slice(0, 60) : USUAL.who,
      system: read.system === 'in' ? 'in' : 'mm',
      theme: read.theme === 'light' || read.theme === 'dark' ? read.theme : 'auto',
    };
  } catch {
    return USUAL;
  }
}

let person = load();

function show(): void {
  if (person.theme === 'auto') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = person.theme;
}
show();

export function setPerson(change: Partial<Person>): void {
  person = { ...person, ...change };
  localStorage.setItem(KEY, JSON.stringify(person));
  show();
  for (const listener of listeners) listener();
}

export const getPerson = (): Person => person;

export function usePerson(): Person {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => person,
  );
}
