package oakum.portal.view;

import oakum.portal.people.Role;

/** Composes what one role wants first. */
interface Start {
    Role role();

    StartPage compose(Sight sight);
}
