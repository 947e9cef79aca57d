import { framesComeInOrder } from './frames-suite.js';
import { packagedTools, temporaryFolder } from './tools.js';

framesComeInOrder(packagedTools, temporaryFolder());
