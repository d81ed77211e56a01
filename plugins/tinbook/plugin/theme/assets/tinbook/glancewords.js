// Every word that only the page of tins says.
export const told = {
  from: "From",
  to: "To",
  eggsBecome: (one, many) => `${one} eggs become ${many}`,
  full: "Full to the brim",
  becomes: "becomes",
  nearest: name => `Nearest to ${name}`,
  none: "none",
};
