/** Ends at once, to time what a program costs to start. */
export {};
