/** Every route. Add one to its subject's file; a new subject is its file and one line here. */
import type { Context } from '../context.ts';
import type { Route } from '../http.ts';
import { carryRoutes } from './carry.ts';
import { editRoutes } from './edits.ts';
import { helloRoutes } from './hello.ts';
import { photoRoutes } from './photos.ts';
import { refitRoutes } from './refits.ts';
import { seenRoutes } from './seen.ts';

export const routesOf = (context: Context): readonly Route[] =>
  [helloRoutes, refitRoutes, editRoutes, seenRoutes, carryRoutes, photoRoutes].flatMap((make) =>
    make(context),
  );
