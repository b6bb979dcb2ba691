/** What has to be known before the axis can be moved. */

import { Link } from 'wouter';
import type { MoveSetting } from '../../../engine/advice/axis-model.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { Session } from '../../state/session.ts';

export function Lacking({ session, setting }: { session: Session; setting: MoveSetting }) {
  return (
    <div className="sheet">
      <h2>It cannot be moved yet</h2>
      <p>To put the axis together, these have to be known, if only as a guess:</p>
      <ul>
        {setting.missing.map(({ path, name }) => (
          <li key={path}>
            {capital(name)} <span className="small soft">({path})</span>
          </li>
        ))}
      </ul>
      <p>
        <Link href={`/refit/${session.id}/know`}>Enter them on the page Know</Link>
      </p>
    </div>
  );
}
