import type { LangiumServices } from 'langium/lsp';
import type { MeasuredRuns } from './lowering/measured-runs';
import type { UsedFiles } from './names/used-files';
import type { OutsideServices } from './outside';

/**
 * What each service may ask of the others. A file of its own, since the services name this type and
 * module.ts names the services: together they would be one large circle of imports.
 */
export interface KerfAddedServices {
    readonly names: {
        /** Which files a document sees through `use`. */
        readonly UsedFiles: UsedFiles;
        /** All runs that are read, wherever they stand. */
        readonly MeasuredRuns: MeasuredRuns;
    };
    readonly outside: OutsideServices;
}

export type KerfServices = LangiumServices & KerfAddedServices;
