import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { assess } from '../../src/judge/assess.ts';

/**
 * `assess` as the app has it: bundled and minified. What runs the sources as they are names every function each time that
 * one is made, which takes a fifth of the time and is no part of the app.
 */
export async function builtAssess(): Promise<typeof assess> {
  const entry = fileURLToPath(new URL('../../src/judge/assess.ts', import.meta.url));
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    ssr: { noExternal: true },
    build: { ssr: entry, write: false, minify: true },
  });
  if (Array.isArray(built) || !('output' in built)) throw new Error('Not one build.');
  const module = await import(`data:text/javascript,${encodeURIComponent(built.output[0].code)}`);
  return module.assess;
}
