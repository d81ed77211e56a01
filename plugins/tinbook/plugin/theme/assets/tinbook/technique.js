import { people } from "./people.js";

people();
