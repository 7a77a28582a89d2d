// The build for a device. The tests on the JVM are Maven's: `cargo xtask test kotlin`.
pluginManagement {
    repositories {
        google()
        mavenCentral()
        gradlePluginPortal()
    }
}

dependencyResolutionManagement {
    repositoriesMode = RepositoriesMode.FAIL_ON_PROJECT_REPOS
    repositories {
        google()
        mavenCentral()
    }
}

rootProject.name = "lapwright"
include(":bindings", ":screens", ":app")
