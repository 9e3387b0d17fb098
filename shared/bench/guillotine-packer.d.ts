// The package's own bundles need a Node console; its modules do not, but come without types of their own.
declare module 'guillotine-packer/dist/lib/guillotine-packer.js' {
    interface PackedItem {
        readonly item: unknown;
        readonly x: number;
        readonly y: number;
        readonly width: number;
        readonly height: number;
    }
    export function packer(
        inputs: { binWidth: number; binHeight: number; items: { width: number; height: number; piece: number }[] },
        options: { kerfSize: number; allowRotation: boolean },
    ): PackedItem[][] | null;
}
