/** Style sheets are imported for their effect. */
declare module '*.css';

/** The same as text. */
declare module '*.css?inline' {
  const text: string;
  export default text;
}
