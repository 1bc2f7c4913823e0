import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDrawer } from '../../api/drawer/drawer.ts';

/** No parts of one's own: what is measured must not hang on whose machine it is. The folder is never made. */
export const NO_DRAWER = openDrawer({ folder: join(tmpdir(), 'pupilwalk-bench-without-drawer') });
