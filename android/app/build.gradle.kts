// The app for a device. `cargo xtask android` builds the libraries that it packs.
plugins {
    alias(libs.plugins.android.application)
    alias(libs.plugins.kotlin.android)
    alias(libs.plugins.kotlin.compose)
}

android {
    namespace = "lapwright.app"
    compileSdk = 35

    defaultConfig {
        applicationId = "lapwright.app"
        // The same as in `bindings/tasks/src/android.rs`.
        minSdk = 26
        targetSdk = 35
        versionCode = 1
        versionName = "0.1.0"
        ndk { abiFilters += listOf("arm64-v8a", "armeabi-v7a", "x86_64") }
    }

    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }

    androidResources { localeFilters += listOf("en", "es") }
    // `src/test` is Maven's: it knows what those tests need.
    sourceSets["test"].setRoot("target/no-tests")
    sourceSets["main"].jniLibs.srcDir("target/jni")

    buildTypes {
        release {
            // JNA finds what it calls by name. What starts first is compiled at installing: `src/main/baseline-prof.txt`.
            isMinifyEnabled = false
        }
    }
}

kotlin { jvmToolchain(17) }

dependencies {
    implementation(project(":screens"))
    implementation(libs.activity.compose)
}
