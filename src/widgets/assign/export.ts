/** All that writes files for course systems, fetched together when the first is asked for. */
export { exportAs, itemOf, svgOf } from '../../exercises/export/index.ts';
export { poolOf } from '../../exercises/pool.ts';
