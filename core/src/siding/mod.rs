//! Courses, story pole, runs, joints and gables.
