/** Ways from what is known to what to do with it. */
import { Link } from 'wouter';

const PAGES = [
  ['keep', 'Keep, repair or replace?'],
  ['worth', 'Is it worth it?'],
  ['fault', 'Dead or asleep?'],
] as const;

export function AdviceLinks({ refit }: { refit: string }) {
  return (
    <nav aria-label="Advice" className="row">
      {PAGES.map(([to, words]) => (
        <Link key={to} className="button" href={`/refit/${refit}/${to}`}>
          {words}
        </Link>
      ))}
    </nav>
  );
}
