/** Parts tried in places of the axis, without choosing them in the refit. */

import { useEffect } from 'react';
import { capital } from '../../../engine/quantity/words.ts';
import type { View } from '../../state/session.ts';

/** Parts put in places of the axis for a try, by place. */
export type Parts = Readonly<Record<string, string>>;

/** Places of the axis for which there is more than one part: tried here, not chosen in the refit. */
export function Others({
  view,
  subject,
  parts,
  onChange,
}: {
  view: View;
  subject: string;
  parts: Parts;
  onChange: (parts: Parts) => void;
}) {
  const places = view.refit.chains.find(({ id }) => id === subject)?.places ?? {};
  const open = Object.entries(places).filter(
    ([, { options, chosen }]) => options.length > 1 && chosen !== null && chosen !== 'none',
  );
  useEffect(() => () => onChange({}), [onChange]);
  if (open.length === 0) return null;
  return (
    <fieldset className="row others" aria-label="Parts to try">
      {open.map(([place, { options, chosen }]) => (
        <div key={place}>
          <label htmlFor={`try-${place}`}>{capital(place)}</label>
          <select
            id={`try-${place}`}
            value={parts[place] ?? chosen ?? ''}
            onChange={(event) => {
              const { [place]: _gone, ...rest } = parts;
              onChange(event.target.value === chosen ? rest : { ...rest, [place]: event.target.value });
            }}
          >
            {options.map((id) => (
              <option key={id} value={id}>
                {view.refit.parts[id]?.name ?? id}
              </option>
            ))}
          </select>
        </div>
      ))}
    </fieldset>
  );
}
