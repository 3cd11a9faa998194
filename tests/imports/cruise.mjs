import { createRequire } from 'node:module';
import { cruise } from 'dependency-cruiser';

const rules = createRequire(import.meta.url)('./dependency-cruiser.cjs');

/**
 * Checks the imports of the program below `root` against the rules. Imports of types count like all others.
 * @param {string} root
 * @returns {Promise<{ modules: string[], violations: { rule: string, from: string, to: string }[] }>}
 */
export async function cruiseImports(root) {
  const { output } = await cruise(
    ['model', 'server', 'web'],
    {
      baseDir: root,
      validate: true,
      ruleSet: rules,
      doNotFollow: { path: 'node_modules' },
      tsPreCompilationDeps: true,
      enhancedResolveOptions: {
        extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
        exportsFields: ['exports'],
        conditionNames: ['import', 'node', 'default'],
        mainFields: ['module', 'main'],
      },
    },
    {},
  );
  if (typeof output === 'string') throw new Error('dependency-cruiser gave text where its result was asked for');
  return {
    modules: output.modules.map(({ source }) => source).filter((source) => /^(model|server|web)\//.test(source)),
    violations: output.summary.violations.map(({ rule, from, to }) => ({ rule: rule.name, from, to })),
  };
}
