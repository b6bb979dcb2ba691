/** The other pages on which the machine is got to know, and what follows from it. */
import { Link } from 'wouter';

const PAGES = [
  ['survey', 'Survey the machine', 'condition, photos, tags, what to save'],
  ['evidence', 'Bench tests', 'measure what no plate tells'],
  ['keep', 'Keep, repair or replace?', 'part by part, with reasons'],
  ['worth', 'Is it worth it?', 'iron and access against the cost'],
  ['fault', 'Dead or asleep?', 'the cheapest test first'],
] as const;

export function KnowPages({ refit }: { refit: string }) {
  return (
    <nav aria-label="More of Know" className="row know-pages">
      {PAGES.map(([to, words, says]) => (
        <Link key={to} className="button" href={`/refit/${refit}/${to}`}>
          <span>
            {words}
            <br />
            <span className="small soft">{says}</span>
          </span>
        </Link>
      ))}
    </nav>
  );
}
