/** Photos of a refit. */
import { LIMITS, photoKind } from '../../engine/refit/index.ts';
import type { PhotoKept, PhotoList } from '../../engine/refit/wire.ts';
import { json, refusal, refusedBy } from '../answer.ts';
import { type Context, withRefit } from '../context.ts';
import type { Route } from '../http.ts';

export const photoRoutes = (context: Context): Route[] => [
  {
    method: 'GET',
    path: '/api/refits/:id/photos',
    handle: ({ at }) =>
      withRefit(context, at.id!, () => {
        const photos = context.store.listPhotos(at.id!);
        return photos.ok
          ? json(200, { photos: photos.value } satisfies PhotoList)
          : refusedBy(photos.problem);
      }),
  },
  {
    method: 'PUT',
    path: '/api/refits/:id/photos/:name',
    takes: {
      types: ['image/jpeg', 'image/png', 'image/webp', 'application/octet-stream'],
      most: LIMITS.photo,
    },
    handle: ({ at, body }) =>
      withRefit(context, at.id!, () =>
        context.turns.take(() => {
          const name = at.name!;
          const kept = context.store.savePhoto(at.id!, name, body);
          if (kept.ok) return json(201, { name, stripped: kept.value.stripped } satisfies PhotoKept);
          return kept.problem.code === 'out-of-domain'
            ? refusal(409, 'conflict', kept.problem.message, 'name')
            : refusedBy(kept.problem);
        }),
      ),
  },
  {
    method: 'GET',
    path: '/api/refits/:id/photos/:name',
    handle: ({ at }) =>
      withRefit(context, at.id!, () => {
        const photo = context.store.readPhoto(at.id!, at.name!);
        if (!photo.ok)
          return photo.problem.code === 'unknown-name'
            ? refusal(404, 'not-found', photo.problem.message, 'name')
            : refusedBy(photo.problem);
        return {
          status: 200,
          headers: {
            'content-type': `image/${photoKind(photo.value) ?? 'unknown'}`,
            // Another folder may have another photo under the same address.
            'cache-control': 'no-store',
          },
          body: photo.value,
        };
      }),
  },
];
