/** A look at a piece: the middle of what is seen, as a fraction of the piece, and how much closer than the whole. */
export interface Window {
    readonly x: number;
    readonly y: number;
    readonly zoom: number;
}

/** From mm on the piece to px on the screen: px = mm * scale + shift. */
export interface Placing {
    readonly scale: number;
    readonly shiftX: number;
    readonly shiftY: number;
}

export interface Size {
    readonly width: number;
    readonly height: number;
}

export const wholeWindow: Window = { x: 0.5, y: 0.5, zoom: 1 };

const CLOSEST = 400;

/** Room around the piece for dimension lines and the ends of the section line, px. */
export const MARGIN = 44;

export function place(window: Window, piece: Size, screen: Size): Placing {
    const scale = fitScale(piece, screen) * window.zoom;
    return {
        scale,
        shiftX: screen.width / 2 - window.x * piece.width * scale,
        shiftY: screen.height / 2 - window.y * piece.height * scale,
    };
}

function fitScale(piece: Size, screen: Size): number {
    const across = (screen.width - 2 * MARGIN) / Math.max(piece.width, 1e-3);
    const down = (screen.height - 2 * MARGIN) / Math.max(piece.height, 1e-3);
    return Math.max(Math.min(across, down), 1e-3);
}

/** Closer by `factor`, keeping what lies under the screen point where it is. */
export function zoomAt(window: Window, factor: number, point: { x: number; y: number }, piece: Size, screen: Size): Window {
    const zoom = Math.min(window.zoom * factor, CLOSEST);
    if (!(zoom > 1)) return wholeWindow;
    const before = place(window, piece, screen);
    const scale = fitScale(piece, screen) * zoom;
    const x = (point.x - before.shiftX) / before.scale;
    const y = (point.y - before.shiftY) / before.scale;
    return within({
        x: (x + (screen.width / 2 - point.x) / scale) / piece.width,
        y: (y + (screen.height / 2 - point.y) / scale) / piece.height,
        zoom,
    });
}

/** Moved by px on the screen. */
export function pan(window: Window, dx: number, dy: number, piece: Size, screen: Size): Window {
    const { scale } = place(window, piece, screen);
    return within({ ...window, x: window.x - dx / (scale * piece.width), y: window.y - dy / (scale * piece.height) });
}

function within(window: Window): Window {
    const clamp = (value: number) => Math.min(Math.max(Number.isFinite(value) ? value : 0.5, 0), 1);
    return { x: clamp(window.x), y: clamp(window.y), zoom: window.zoom };
}
