/** By what the worst point of the picture is judged. */
export type Shown = 'contrast' | 'blur';
