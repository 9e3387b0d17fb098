import type { FileSystemProvider } from 'langium';

type Asynchronous = Pick<FileSystemProvider, 'readFile' | 'readBinary' | 'readDirectory' | 'exists' | 'stat'>;

/** A file system for the language without its blocking half, which could not follow links or ask another process. */
export function asynchronousOnly(system: Asynchronous): { fileSystemProvider: () => FileSystemProvider } {
    return {
        fileSystemProvider: () => ({
            ...system,
            readFileSync: refuse,
            readBinarySync: refuse,
            readDirectorySync: refuse,
            existsSync: refuse,
            statSync: refuse,
        }),
    };
}

function refuse(): never {
    throw new Error('Recipes are read asynchronously.');
}
