import type { APIRoute } from 'astro';
import { bank, tryAll } from '../site/bank.ts';

/** Every exercise as data: what the pages that practise, assign and mark fetch. Sound for every seed, or not built. */
export const GET: APIRoute = async () => {
  await tryAll();
  return Response.json(
    (await bank()).map(({ template, unit, lesson }) => ({
      template,
      unit: unit?.entry.id ?? '',
      lesson: lesson?.address ?? '',
    })),
  );
};
