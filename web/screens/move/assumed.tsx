/** What was taken for want of better. */
import type { MoveSetting } from '../../../engine/advice/axis-model.ts';

export function Assumed({ setting }: { setting: MoveSetting }) {
  if (setting.assumed.length === 0) return null;
  return (
    <details className="sheet assumed">
      <summary>{setting.assumed.length} numbers are assumed, because the refit does not say them</summary>
      <ul>
        {setting.assumed.map(({ path, says }) => (
          <li key={path}>
            {says} <span className="small soft">({path})</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
