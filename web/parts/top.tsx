/** The head of every page: name, where we are, how to read and see. */
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { setPerson, usePerson } from '../state/person.ts';

export function Top({ children }: { children?: ReactNode }) {
  const person = usePerson();
  return (
    <header className="top">
      <Link className="brand" href="/">
        Fettle
      </Link>
      {children ?? <span className="who" />}
      <details className="prefer">
        <summary>
          Units<span className="looks"> and looks</span>
        </summary>
        <div className="row">
          <label>
            Read lengths in
            <select
              value={person.system}
              onChange={(event) => setPerson({ system: event.target.value === 'in' ? 'in' : 'mm' })}
            >
              <option value="mm">millimetres</option>
              <option value="in">inches</option>
            </select>
          </label>
          <label>
            Looks
            <select
              value={person.theme}
              onChange={(event) => setPerson({ theme: event.target.value as 'auto' | 'light' | 'dark' })}
            >
              <option value="auto">as the computer</option>
              <option value="light">light</option>
              <option value="dark">dark</option>
            </select>
          </label>
          <label>
            Your name in the history
            <input
              value={person.who}
              maxLength={60}
              onChange={(event) => setPerson({ who: event.target.value })}
              onBlur={(event) => setPerson({ who: event.target.value.trim() || 'somebody' })}
            />
          </label>
        </div>
      </details>
    </header>
  );
}
