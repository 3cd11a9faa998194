#!/usr/bin/env node
/** `npm start`: installs and builds when needed, shows the ranking of the built-in site, and serves the page. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { prepareOrExit, SERVER_BUILD, WEB_BUILD } from './prepare.mjs';

prepareOrExit();
const { start } = await import(pathToFileURL(join(SERVER_BUILD, 'start.js')).href);
process.exitCode = await start(process.argv.slice(2), { webDir: WEB_BUILD });
