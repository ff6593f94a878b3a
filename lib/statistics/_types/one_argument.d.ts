/** A special function of one argument. */
declare function oneArgument(x: number): number;
export default oneArgument;
