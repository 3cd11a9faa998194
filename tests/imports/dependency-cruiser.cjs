/**
 * Who may import whom. Imports run one way: web and server take the model through its public face; inside the model
 * lesson stands on siting, siting on thermal, shading, climate and solar, and those on solar and on the files directly in model/.
 */

/** The climates are data that the site schema names; that file imports nothing of the model. */
const CLIMATE_DATA = '^model/climate/samples\\.ts$';

/** Build configurations run on the developer's machine only. */
const BUILD_CONFIG = '(^|/)(vite\\.config|precache)\\.ts$';

module.exports = {
  forbidden: [
    {
      name: 'model-through-its-face',
      severity: 'error',
      from: { path: '^(web|server)/' },
      to: { path: '^model/', pathNot: '^model/index\\.ts$' },
    },
    {
      name: 'model-stands-alone',
      severity: 'error',
      from: { path: '^model/' },
      to: { path: '^(web|server|tests)/' },
    },
    {
      name: 'model-knows-no-runtime',
      severity: 'error',
      from: { path: '^model/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'face-not-from-inside',
      severity: 'error',
      from: { path: '^model/' },
      to: { path: '^model/index\\.ts$' },
    },
    {
      name: 'nothing-stands-on-siting',
      severity: 'error',
      from: { path: '^model/', pathNot: '^model/(siting/|lesson/|index\\.ts$)' },
      to: { path: '^model/siting/' },
    },
    {
      name: 'nothing-stands-on-lesson',
      severity: 'error',
      from: { path: '^model/', pathNot: '^model/(lesson/|index\\.ts$)' },
      to: { path: '^model/lesson/' },
    },
    {
      name: 'physics-apart',
      severity: 'error',
      from: { path: '^model/(thermal|shading|climate)/' },
      to: { path: '^model/(thermal|shading|climate)/', pathNot: '^model/$1/' },
    },
    {
      name: 'sun-stands-alone',
      severity: 'error',
      from: { path: '^model/solar/' },
      to: { path: '^model/(thermal|shading|climate|siting)/' },
    },
    {
      name: 'foundations-below-physics',
      severity: 'error',
      from: { path: '^model/[^/]+$', pathNot: '^model/index\\.ts$' },
      to: { path: '^model/(solar|thermal|shading|climate)/', pathNot: CLIMATE_DATA },
    },
    {
      name: 'page-and-server-apart',
      severity: 'error',
      from: { path: '^(web|server)/' },
      to: { path: '^(web|server|tests)/', pathNot: '^$1/' },
    },
    {
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'no-development-packages',
      severity: 'error',
      from: { path: '^(model|web|server)/', pathNot: BUILD_CONFIG },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'] },
    },
    {
      name: 'nothing-unresolved',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
};
