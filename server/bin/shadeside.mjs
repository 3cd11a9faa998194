#!/usr/bin/env node
/** The command `shadeside`: installs and builds when needed, then runs the command line. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { prepareOrExit, SERVER_BUILD, WEB_BUILD } from './prepare.mjs';

prepareOrExit();
const { main } = await import(pathToFileURL(join(SERVER_BUILD, 'cli.js')).href);
// The exit code is set, not forced: output that a pipe has not taken yet still goes out.
process.exitCode = await main(process.argv.slice(2), { webDir: WEB_BUILD });
