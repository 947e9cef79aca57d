import { findTools } from '../../src/clips/tools.js';
import { barsComeBack } from '../clips/bars-suite.js';
import { framesComeInOrder } from '../clips/frames-suite.js';
import { temporaryFolder } from '../clips/tools.js';

// The main tests of movie files with the machine's own ffmpeg.
const tools = await findTools();
const folder = temporaryFolder();
barsComeBack(tools, folder);
framesComeInOrder(tools, folder);
