import { barsComeBack } from './bars-suite.js';
import { packagedTools, temporaryFolder } from './tools.js';

barsComeBack(packagedTools, temporaryFolder());
