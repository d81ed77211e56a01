import { glance } from "./glance.js";

glance();
