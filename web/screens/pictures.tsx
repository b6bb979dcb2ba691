/** The pictures of an axis, fetched when they come near. */
import { lazy, Suspense, useEffect, useState } from 'react';
import type { Picture } from '../../engine/assess/pictures/index.ts';
import type { Session, View } from '../state/session.ts';

const PictureCard = lazy(() =>
  import('../pictures/picture-card.tsx').then(({ PictureCard: card }) => ({ default: card })),
);

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly chain: string;
  readonly onSelect: (finding: string) => void;
}

export function Pictures({ session, view, chain, onSelect }: Props) {
  const [pictures, setPictures] = useState<readonly Picture[]>([]);
  const { shown } = view;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new snapshot makes new pictures
  useEffect(() => {
    let current = true;
    session.engine.ask('pictures', { chain }).then(
      (got) => current && setPictures(got as readonly Picture[]),
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, [session, chain, shown]);
  return (
    <section aria-labelledby="pictures" style={{ marginTop: '2rem' }}>
      <h2 id="pictures">Pictures</h2>
      <Suspense fallback={<p role="status">Drawing …</p>}>
        <div className="columns two">
          {pictures.map((picture) => (
            <PictureCard key={picture.id} picture={picture} onSelectFinding={onSelect} />
          ))}
        </div>
      </Suspense>
    </section>
  );
}
