import { people } from "./people.js";
import { share } from "./share.js";

people();
share();
