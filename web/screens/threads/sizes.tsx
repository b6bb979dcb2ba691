/** A thread: its profile, hole, limits and sizes. */
import { dimensionsOf, drillsFor, limitsOf, type Thread } from '../../../engine/threads/index.ts';
import { usePerson } from '../../state/person.ts';
import { Profile } from './profile.tsx';
import { sayLength, sayValue } from './say.ts';

export function Sizes({ thread, className }: { readonly thread: Thread; readonly className: string }) {
  const { system } = usePerson();
  const limits = limitsOf(thread, className.trim() === '' ? undefined : className);
  const inch = system === 'in';
  return (
    <div className="columns two">
      <section aria-labelledby="sizes">
        <h2 id="sizes">{thread.designation}</h2>
        <Profile thread={thread} system={system} />
        <h3>Hole to drill</h3>
        <ul>
          {drillsFor(thread).map(({ name, use, share, inLimits }) => (
            <li key={`${name} ${use}`}>
              {name}, {use}
              {share !== undefined && share < 1 ? `: ${Math.round(100 * share)} % of the thread is left` : ''}
              {inLimits === false ? '; outside the limits of the bore' : ''}
            </li>
          ))}
        </ul>
        {limits.ok ? (
          limits.value.map((each) => (
            <div key={each.side + each.className}>
              <h3>
                Limits {each.side === 'external' ? 'outside' : 'inside'}
                {each.className.includes(' ') ? '' : `, class ${each.className}`}
              </h3>
              <table>
                <thead>
                  <tr>
                    <th scope="col">size</th>
                    <th scope="col" className="number">
                      smallest
                    </th>
                    <th scope="col" className="number">
                      largest
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {each.rows.map(({ key, name, low, high }) => (
                    <tr key={key}>
                      <th scope="row">{name}</th>
                      <td className="number">{low === undefined ? '–' : sayLength(low, system)}</td>
                      <td className="number">{high === undefined ? '–' : sayLength(high, system)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
              <p className="small soft">
                {each.note} Source: {each.source}.
              </p>
            </div>
          ))
        ) : (
          <p className="bad" role="alert">
            {limits.problem.message}
          </p>
        )}
      </section>
      <section aria-labelledby="all-sizes">
        <h2 id="all-sizes">All sizes, before any tolerance</h2>
        <table>
          <tbody>
            {dimensionsOf(thread).map(({ key, name, value, unit, says }) => (
              <tr key={key}>
                <th scope="row">
                  {name}
                  {says && <div className="small soft">{says}</div>}
                </th>
                <td className="number">{sayValue(value, unit, inch ? 'in' : 'mm')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}
