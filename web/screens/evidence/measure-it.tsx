/** Beside a fact that is asked for: the bench tests that would settle it. */
import { Link } from 'wouter';
import { useBenchSheets } from '../../state/bench.ts';
import type { Session } from '../../state/session.ts';

export function MeasureIt({ session, path }: { session: Session; path: string }) {
  const sheets = useBenchSheets(session) ?? [];
  const pieces = path.split('.');
  const [place, fact] = pieces.slice(-2);
  const found = sheets.filter(({ settles }) =>
    settles.some((each) => each.place === place && each.fact === fact),
  );
  const subject = pieces.slice(0, -1).join('.');
  return found.map(({ id, title }) => (
    <p key={id} className="measure-it">
      <Link href={`/refit/${session.id}/evidence/${id}?for=${encodeURIComponent(subject)}`}>
        Measure it: {title.charAt(0).toLowerCase() + title.slice(1)}
      </Link>
    </p>
  ));
}
