import type { APIRoute, GetStaticPaths } from 'astro';
import rulings from '../../../shared/schema/rulings.schema.json';
import work from '../../../shared/schema/work.schema.json';

/** The formats of the files that readers hand on, for whoever wants to read or write them elsewhere. */
const schemas = { 'work.schema': work, 'rulings.schema': rulings };

export const getStaticPaths = (() =>
  Object.entries(schemas).map(([schema, text]) => ({
    params: { schema },
    props: { text },
  }))) satisfies GetStaticPaths;

export const GET: APIRoute<{ text: object }> = ({ props }) => Response.json(props.text);
