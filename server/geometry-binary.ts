import binary from 'clipper2-wasm/dist/umd/clipper2z.wasm';

/** The compiled polygon library's bytes; they travel inside the bundle. */
export function wasmBinary(): Uint8Array {
    return binary;
}
