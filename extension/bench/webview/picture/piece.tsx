import { useId } from 'preact/hooks';
import type { BlankView, LayerView, PieceView } from '../../../../shared/view/bench-view';
import { pathId, url, woodId } from '../ids';
import { still } from '../still';

interface PieceProps {
    readonly blank: BlankView;
    readonly piece: PieceView;
    readonly blanks: readonly BlankView[];
    /** Shadows in what was dug; left out where the picture is small. */
    readonly relief: boolean;
}

/** The piece as it lies on the bench, in mm: where parts were cut free or holes fell out, what is left of it. */
export const Piece = still((props: PieceProps) => {
    const { blank, piece } = props;
    const clip = `left-${useId()}`;
    if (piece.outline === undefined) {
        return (
            <g>
                <Surface {...props} />
                <rect class="edge" width={blank.width} height={blank.height} fill="none" />
            </g>
        );
    }
    const shape = `#${pathId(piece.outline)}`;
    return (
        <g>
            <clipPath id={clip}>
                <use href={shape} />
            </clipPath>
            <g clip-path={url(clip)}>
                <Surface {...props} />
            </g>
            <use href={shape} class="edge" fill="none" />
        </g>
    );
});

function Surface({ blank, piece, blanks, relief }: PieceProps) {
    const { width, height } = blank;
    return (
        <g>
            <rect width={width} height={height} fill={url(woodId(blank.name, blank.colour))} />
            {piece.tint !== undefined && <rect class="tint" width={width} height={height} fill={piece.tint} />}
            {piece.layers.map((layer, index) => (
                <Layer key={`${layer.step} ${layer.kind} ${index}`} layer={layer} blanks={blanks} relief={relief} />
            ))}
            {piece.masked && <rect width={width} height={height} fill={url('hatch-tape')} />}
            {(piece.finished || piece.sealed) && (
                <rect width={width} height={height} fill={url('sheen')} opacity={piece.finished ? 1 : 0.6} />
            )}
        </g>
    );
}

function Layer({ layer, blanks, relief }: { layer: LayerView; blanks: readonly BlankView[]; relief: boolean }) {
    const shape = `#${pathId(layer.path)}`;
    switch (layer.kind) {
        case 'cut':
            return (
                <g fill="none" stroke={layer.colour}>
                    <use href={shape} stroke-width={layer.width} stroke-opacity="0.6" />
                    <use href={shape} class="cut-line" />
                </g>
            );
        case 'through':
            return (
                <g>
                    <use
                        href={shape}
                        fill={isClear(layer.colour) ? undefined : layer.colour}
                        class={isClear(layer.colour) ? 'hole' : undefined}
                    />
                    {relief && <InnerShadow path={layer.path} depth={1} />}
                </g>
            );
        case 'inlaid':
            return (
                <g>
                    <use href={shape} fill={inlaidPaint(layer, blanks)} />
                    {layer.tint !== undefined && <use href={shape} class="tint" fill={layer.tint} />}
                    <use href={shape} class="seam" fill="none" />
                </g>
            );
        case 'spilled':
            return (
                <g>
                    <use
                        href={shape}
                        fill={layer.colour}
                        fill-opacity={layer.opacity * 0.55}
                        stroke={layer.colour}
                        class="spill"
                    />
                    <Poured layer={layer} relief={relief} />
                </g>
            );
        case 'filled':
            return <Poured layer={layer} relief={relief} />;
        default:
            return (
                <g>
                    <use href={shape} fill={layer.colour} fill-opacity={layer.opacity} />
                    {relief && layer.kind === 'burnt' && layer.depth > 0 && <use href={shape} fill={url('soot')} />}
                    {relief && layer.kind === 'burnt' && <InnerShadow path={layer.path} depth={layer.depth} />}
                </g>
            );
    }
}

/** Resin under its coats, with the window in it; metal powder with its flakes. */
function Poured({ layer: { path, colour, opacity, tint, metal }, relief }: { layer: LayerView; relief: boolean }) {
    const shape = `#${pathId(path)}`;
    return (
        <g>
            <use href={shape} fill={colour} fill-opacity={opacity} />
            {tint !== undefined && <use href={shape} class="tint" fill={tint} />}
            {relief && <use href={shape} fill={url(metal ? 'flakes' : 'gloss')} />}
        </g>
    );
}

/** A low light from the top left: the deeper, the wider the shadow of the wall. */
function InnerShadow({ path, depth }: { path: string; depth: number }) {
    const reach = Math.min(Math.max(depth, 0.15) * 0.9, 1.4);
    const clip = `clip-${useId()}`;
    return (
        <g clip-path={url(clip)}>
            <clipPath id={clip}>
                <use href={`#${pathId(path)}`} />
            </clipPath>
            <use
                href={`#${pathId(path)}`}
                fill="none"
                stroke="#000"
                stroke-opacity="0.42"
                stroke-width={reach * 2}
                transform={`translate(${reach * 0.6} ${reach * 0.6})`}
            />
        </g>
    );
}

/** The let-in wood keeps the grain of the blank it came from. */
function inlaidPaint(layer: LayerView, blanks: readonly BlankView[]): string {
    const source = blanks.find(
        ({ colour, grain }) => colour === layer.colour && (layer.grain === undefined || grain === layer.grain),
    );
    return source === undefined ? layer.colour : url(woodId(source.name, source.colour));
}

function isClear(colour: string): boolean {
    return /^#[0-9a-f]{6}00$/i.test(colour);
}
