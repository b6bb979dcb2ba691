/** A cut: links in the order in which they give way. */
import { marginText } from '../../../engine/assess/say-margin.ts';
import type { CutDetail } from '../../../engine/work/index.ts';
import { MarginRule } from '../../parts/margin-rule.tsx';
import { Scroll } from '../../parts/scroll.tsx';
import { length, rpm, value } from './say.ts';

export function CutDetails({ detail }: { readonly detail: CutDetail }) {
  const { links, cut, speed, range } = detail;
  const isWidth = cut.operation === 'parting';
  return (
    <div>
      <h3>Which gives way first</h3>
      <p className="small">
        At {rpm(speed)}
        {range ? ` in the ${range}` : ''}. The rest of the cut stays as it is.
      </p>
      <Scroll label="Links of the cut">
        <table>
          <thead>
            <tr>
              <th scope="col">link</th>
              <th scope="col" className="number">
                asked
              </th>
              <th scope="col" className="number">
                there is
              </th>
              <th scope="col">margin</th>
              <th scope="col" className="number">
                gives way at {isWidth ? 'width' : 'depth'}
              </th>
              <th scope="col" className="number">
                at feed
              </th>
            </tr>
          </thead>
          <tbody>
            {links.map((link) => (
              <tr key={link.id}>
                <th scope="row">{link.name}</th>
                <td className="number">{value(link.asked, link.unit)}</td>
                <td className="number">{value(link.there, link.unit)}</td>
                <td>
                  <MarginRule margin={link.margin} verdict={link.margin < 1 ? 'fails' : 'fits'} />
                  <span className="small">×{marginText(link.margin)}</span>
                </td>
                <td className="number">{link.depth === undefined ? '–' : length(link.depth)}</td>
                <td className="number">{link.feed === undefined ? '–' : length(link.feed)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <details>
        <summary>Forces, torque and power of the cut</summary>
        <table>
          <tbody>
            {cut.found.map((row) => (
              <tr key={row.key}>
                <th scope="row">{row.name}</th>
                <td className="number">{value(row.value, row.unit)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {cut.notes.map((note) => (
          <p key={note} className="small soft">
            {note}
          </p>
        ))}
      </details>
    </div>
  );
}
